//! Arguments to exit code.

fn main() {}
