//! What a page calls: `input(n)` gives room for a request of n bytes, `call()` answers
//! it and gives the answer's length, `output()` says where the answer lies.
//!
//! After a trap `trouble()` is the length of what is known of it, at `output()`; the
//! instance must then be thrown away, since its locks stay locked. There is no `unsafe`
//! block: both buffers are plain vectors, which the page reads and writes through the
//! memory that it owns.

use std::panic;
use std::sync::Mutex;
use std::sync::PoisonError;

use crate::phone::Door;

static INPUT: Mutex<Vec<u8>> = Mutex::new(Vec::new());
static OUTPUT: Mutex<Vec<u8>> = Mutex::new(Vec::new());
static DOOR: Mutex<Option<Door>> = Mutex::new(None);

/// Room for a request; growing it may move the memory, so that a view of it is made afterwards.
#[unsafe(no_mangle)]
pub(super) extern "C" fn input(length: usize) -> *mut u8 {
    let mut buffer = INPUT.lock().unwrap_or_else(PoisonError::into_inner);
    buffer.clear();
    buffer.resize(length, 0);
    buffer.as_mut_ptr()
}

/// Answers the request and gives the answer's length.
#[unsafe(no_mangle)]
pub(super) extern "C" fn call() -> usize {
    panic::set_hook(Box::new(|trouble| {
        if let Ok(mut output) = OUTPUT.try_lock() {
            *output = trouble.to_string().into_bytes();
        }
    }));
    let mut door = DOOR.lock().unwrap_or_else(PoisonError::into_inner);
    let input = INPUT.lock().unwrap_or_else(PoisonError::into_inner);
    let answer = door.get_or_insert_default().call(&input);
    let mut output = OUTPUT.lock().unwrap_or_else(PoisonError::into_inner);
    *output = answer;
    output.len()
}

/// Where the answer lies.
#[unsafe(no_mangle)]
pub(super) extern "C" fn output() -> *const u8 {
    let output = OUTPUT.lock().unwrap_or_else(PoisonError::into_inner);
    output.as_ptr()
}

/// How long it is, of a trap as well.
#[unsafe(no_mangle)]
pub(super) extern "C" fn trouble() -> usize {
    let output = OUTPUT.lock().unwrap_or_else(PoisonError::into_inner);
    output.len()
}
