//! Rulesets: those shipped with the program, and what is said of faulty ones.

mod embedded;
mod faulty;
mod find;
mod loading;
mod mutated;
mod robust;
mod sweep;
mod unread;
