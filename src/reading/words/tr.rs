//! Turkish.

use super::Row;
use crate::facts::ColourWord as C;
use crate::facts::LampKind as L;
use crate::reading::roles::Role as R;

pub(super) const ROWS: &[Row] = &[
    (R::DrawVerb, "tüketir harcar çeker tüketiyor"),
    (R::DrawAdjective, "gerçek fiili hakiki"),
    (R::DrawNoun, "tüketim tüketimi sarfiyat sarfiyatı"),
    (R::Measured, "ölçülen"),
    (R::Only, "sadece yalnızca"),
    (R::Power, "güç gücü"),
    (R::Rating, "anma maksimum"),
    (R::Equivalent, "eşdeğer eşdeğeri muadili eşdeğerinde"),
    (R::Replaces, "yerine"),
    (R::Lamp(L::Hps), "sodyum"),
    (R::Lamp(L::Incandescent), "akkor"),
    (R::Lamp(L::Fluorescent), "floresan"),
    (R::Traditional, "geleneksel"),
    (R::Diode, "ledli diyot boncuk"),
    (R::Double, "çift çiftli"),
    (R::Pieces, "adet tane"),
    (R::Quantity, "sayısı"),
    (R::Light, "lamba lambası ışığı ışık ampul ampulü aydınlatma"),
    (R::Lights, "lambalar"),
    (R::Part, "başlı başlık kafa çubuk"),
    (R::Pack, "li lü lu paket set takım"),
    (R::Each, "her biri"),
    (R::Total, "toplam"),
    (R::Device, "fanı pompa kablo zamanlayıcı adaptör"),
    (R::Deny, "değil"),
    (R::Ppe, "verim verimlilik"),
    (R::Voltage, "voltaj gerilim"),
    (R::Current, "akım"),
    (R::Approx, "yaklaşık"),
    (R::Colour(C::Red), "kırmızı"),
    (R::Colour(C::Blue), "mavi"),
    (R::Colour(C::White), "beyaz"),
    (R::Colour(C::Green), "yeşil"),
    (R::Number(2), "iki"),
    (R::Number(4), "dört"),
    (R::For, "için"),
    (R::And, "ve veya"),
];
