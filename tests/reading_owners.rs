//! Whose a figure is: one diode's, a part's, what feeds the light, or of no thing at all but of papers.

use plainwatt::facts::Read;
use plainwatt::reading::read;
use plainwatt::units::Watts;

fn claim(read: &Read) -> Option<f64> {
    read.advertised_w.map(|t| t.value.value)
}

#[test]
fn letters_of_mathematics_are_letters() {
    assert_eq!(claim(&read("𝐆𝐫𝐨𝐰 lamp 𝟒𝟓𝟎 𝐖, 𝑎𝑐𝑡𝑢𝑎𝑙 210 𝘞")), Some(450.0));
}
