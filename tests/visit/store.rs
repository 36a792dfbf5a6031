//! The memory twin keeps the port's contract.

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use coldsump::store::{MemoryStore, Store, StoreError};

use crate::store_contract::{entries, file, store_contract};

/// Runs what never waits.
fn now<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("the memory store never waits"),
    }
}

#[test]
fn memory_keeps_the_contract() {
    now(store_contract(&MemoryStore::default()));
}

#[test]
fn a_full_memory_keeps_nothing_and_says_so() {
    let store = MemoryStore::default();
    *store.fault.borrow_mut() = Some(StoreError::Full);
    let all = entries();
    assert_eq!(now(store.append(&all)), Err(StoreError::Full));
    assert_eq!(now(store.keep_file(&file(), &all)), Err(StoreError::Full));
    assert_eq!(now(store.keep_text("a", "b")), Err(StoreError::Full));
    *store.fault.borrow_mut() = None;
    assert!(now(store.load()).unwrap().entries.is_empty());
    assert_eq!(now(store.file(file().id)), Ok(None));
}
