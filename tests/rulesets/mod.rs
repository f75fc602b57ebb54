//! Rulesets: those shipped with the program, and what is said of faulty ones.

mod complete;
mod edges;
mod embedded;
mod faulty;
mod find;
mod loading;
mod memory;
mod mutated;
mod mutated_sweep;
mod read;
mod robust;
mod sweep;
mod unread;
