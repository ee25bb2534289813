//! The commands as a person or a script meets them: exact output, exit codes, and which stream carries what.
//!
//! Expected output is in `fixtures/commands/`; the lights there are invented.

mod agreement;
mod audit;
mod diodes;
mod grade;
mod help;
mod manual;
mod mistakes;
mod program;
mod streams;
mod vet;
