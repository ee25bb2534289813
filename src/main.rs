//! Arguments in, exit code out.

use std::process::ExitCode;

fn main() -> ExitCode {
    plainwatt::commands::run(std::env::args_os())
}
