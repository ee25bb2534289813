//! The page as a reader, a printer, a screen reader and an attacker meet it; what needs a browser is tried elsewhere.

mod agreement;
mod pictures;
mod program;
mod safety;
mod size;
mod structure;
