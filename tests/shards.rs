//! Many machines: shards piped through `grade` come together to what one run gives, and nobody waits for a row.

mod grade_help;

use grade_help::{HEADER, body, catalogue, cells, command, grade, lines, run};
use std::io::Write as _;
use std::process::Stdio;
use std::sync::mpsc::channel;
use std::thread;
use std::time::Duration;

const SHARD: [&str; 6] = ["-", "--format", "csv", "--no-header", "--header", HEADER];

#[test]
fn shards_in_parallel_come_together_to_the_single_run_byte_for_byte() {
    const ROWS: usize = 3000;
    for flags in [&[][..], &["--wide"], &["--raw", "--no-titles"]] {
        let arguments = [&SHARD[..], flags].concat();
        let single = grade(&arguments, body(0, ROWS).as_bytes());
        assert_eq!(single.code, Some(0), "{}", single.err);
        // The third shard starts with a row of many semicolons, one shard has no row at all.
        let bounds = [0, 1, 2, 1000, 1000, 2995, ROWS];
        let shards: Vec<Vec<u8>> = thread::scope(|scope| {
            let running: Vec<_> = bounds
                .windows(2)
                .map(|shard| (body(shard[0], shard[1]), arguments.clone()))
                .map(|(rows, arguments)| scope.spawn(move || grade(&arguments, rows.as_bytes())))
                .collect();
            running.into_iter().map(|shard| shard.join().unwrap().out).collect()
        });
        assert!(shards.concat() == single.out, "{flags:?}");
        assert_eq!(single.text().lines().count(), ROWS);
    }
}

#[test]
fn a_run_without_header_gives_the_rows_of_one_with_a_header() {
    let with = grade(&["-", "--format", "csv"], catalogue(500).as_bytes());
    let without = grade(&SHARD, body(0, 500).as_bytes());
    assert_eq!(with.text().split_once('\n').unwrap().1, without.text());
    assert_eq!(cells(&with.out).len(), 501);
}

#[test]
fn a_shard_with_the_header_in_it_has_one_unreadable_row() {
    let ran = grade(&SHARD, catalogue(2).as_bytes());
    assert_eq!(ran.text().lines().next().unwrap(), "listing,supplier,,unreadable,,,,,,,,,,,fault:row");
    assert_eq!(ran.text().lines().count(), 3);
}

#[test]
fn no_header_without_names_is_refused() {
    let ran = grade(&["-", "--no-header"], b"A,B\n");
    assert_eq!(
        (ran.code, ran.err.as_str()),
        (
            Some(2),
            "plainwatt: --no-header needs --header \"listing,claim_w,...\" to name the columns of the input\n"
        )
    );
}

#[test]
fn the_number_of_threads_does_not_show() {
    let input = catalogue(9000);
    let outputs: Vec<_> = ["0", "1", "2", "7"]
        .map(|threads| grade(&["-", "--format", "csv", "--threads", threads], input.as_bytes()).out)
        .to_vec();
    assert!(outputs.windows(2).all(|pair| pair[0] == pair[1]));
}

#[test]
fn rows_come_out_while_standard_input_stays_open() {
    for (threads, output) in [("1", None), ("2", None), ("2", Some("-"))] {
        let mut shard = command();
        shard.args(SHARD).args(["--threads", threads]).stdin(Stdio::piped());
        if let Some(output) = output {
            shard.args(["-o", output]);
        }
        let mut child = shard.spawn().unwrap();
        let (mut input, mut out) = (child.stdin.take().unwrap(), child.stdout.take().unwrap());
        let (answer, answers) = channel();
        let reading = thread::spawn(move || while answer.send(lines(&mut out, 10)).is_ok_and(|()| true) {});
        for batch in 0..3 {
            input.write_all(body(batch * 10, batch * 10 + 10).as_bytes()).unwrap();
            input.flush().unwrap();
            let rows = answers.recv_timeout(Duration::from_secs(60)).expect("the rows of this batch");
            assert_eq!(rows.lines().count(), 10);
            assert!(rows.starts_with(&format!("L{},", batch * 10)), "{rows}");
        }
        drop(input);
        assert_eq!(child.wait_with_output().unwrap().status.code(), Some(0));
        drop(answers);
        reading.join().unwrap();
    }
}

#[test]
fn a_broken_shard_says_so_by_its_exit_code() {
    let ran = run(command().args(["-", "--no-header", "--header", "nothing,known"]), |_| {});
    assert_eq!((ran.code, ran.text()), (Some(2), ""));
}
