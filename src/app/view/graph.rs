//! The reactive graph's values with their kinds kept aside. Underneath is one
//! kind of signal, one of memo and one of stored value: the graph's generic
//! code is in the program once and not once for each kind of thing it holds.

use std::any::Any;
use std::marker::PhantomData;
use std::rc::Rc;

use leptos::prelude as graph;
use leptos::prelude::{Dispose, GetValue, Set, Track, Update, UpdateValue, With, WithUntracked};
use leptos::reactive::graph::{Subscriber, ToAnySubscriber};
use send_wrapper::SendWrapper;

/// What the graph holds: anything, on the page's one thread.
type Held = SendWrapper<Rc<dyn Any>>;

fn hold(value: impl Any) -> Held {
    hold_any(Rc::new(value))
}

fn hold_any(value: Rc<dyn Any>) -> Held {
    SendWrapper::new(value)
}

/// What is held, as the kind it was held as.
fn kind<T: 'static>(held: &dyn Any) -> &T {
    held.downcast_ref().expect(KIND)
}

fn kind_mut<T: 'static>(held: &mut dyn Any) -> &mut T {
    held.downcast_mut().expect(KIND)
}

const KIND: &str = "held as another kind";

// Traits of our own in place of `dyn Fn`, as in the views.

/// A change, made at most once.
trait Change {
    fn make(&mut self, held: &mut dyn Any);
}

/// By a closure, with room for its answer.
struct By<F, T, R>(Option<F>, Option<R>, PhantomData<fn(&mut T)>);

impl<T: 'static, R, F: FnOnce(&mut T) -> R> By<F, T, R> {
    fn new(by: F) -> Self {
        Self(Some(by), None, PhantomData)
    }
}

impl<T: 'static, R, F: FnOnce(&mut T) -> R> Change for By<F, T, R> {
    fn make(&mut self, held: &mut dyn Any) {
        self.1 = self.0.take().map(|by| by(kind_mut(held)));
    }
}

/// Changes what is held. Nobody else may be reading it.
fn change(held: &mut Held, by: &mut dyn Change) {
    by.make(Rc::get_mut(held).expect("changed while it is read"));
}

fn share(held: &Held) -> Rc<dyn Any> {
    Rc::clone(held)
}

/// What is done now, and again each time that something it reads changes, for as
/// long as this is held. Let go, it leaves the lists of all that it read: a signal
/// that seldom changes would otherwise keep a trace of each view there ever was.
pub(super) struct Effect(graph::RenderEffect<()>);

impl Effect {
    pub(super) fn new(does: impl FnMut(Option<()>) + 'static) -> Self {
        Self(graph::RenderEffect::new(does))
    }
}

impl Drop for Effect {
    fn drop(&mut self) {
        let me = self.0.to_any_subscriber();
        me.clear_sources(&me);
    }
}

macro_rules! handle {
    ($(#[$about:meta])* $name:ident, $inner:ty) => {
        $(#[$about])*
        pub struct $name<T> {
            at: $inner,
            kind: PhantomData<fn() -> T>,
        }

        impl<T> Clone for $name<T> {
            fn clone(&self) -> Self {
                *self
            }
        }

        impl<T> Copy for $name<T> {}
    };
}

/// Reading, for what is followed.
macro_rules! followed {
    ($name:ident) => {
        impl<T: 'static> $name<T> {
            /// The value; what reads it is run again when it changes.
            pub fn get(self) -> T
            where
                T: Clone,
            {
                kind::<T>(&*self.held()).clone()
            }

            /// The value, whatever becomes of it later.
            pub fn get_untracked(self) -> T
            where
                T: Clone,
            {
                kind::<T>(&*self.held_untracked()).clone()
            }

            /// Looks at the value; what reads it is run again when it changes.
            pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
                look(kind(&*self.held()))
            }

            /// Looks at the value, whatever becomes of it later.
            pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
                look(kind(&*self.held_untracked()))
            }

            /// The value, if what made it is still there.
            pub fn try_get_untracked(self) -> Option<T>
            where
                T: Clone,
            {
                let held = self.at.try_with_untracked(share)?;
                Some(kind::<T>(&*held).clone())
            }

            fn held(self) -> Rc<dyn Any> {
                self.at.with(share)
            }

            fn held_untracked(self) -> Rc<dyn Any> {
                self.at.with_untracked(share)
            }

            /// What reads this is run again when it changes.
            pub fn track(self) {
                self.at.track();
            }
        }
    };
}

handle! {
    /// A value that can be set and followed.
    RwSignal, graph::RwSignal<Held>
}
followed!(RwSignal);

impl<T: 'static> RwSignal<T> {
    /// A new one, gone when what made it is drawn anew.
    pub fn new(value: T) -> Self {
        let at = signal(hold(value));
        let kind = PhantomData;
        Self { at, kind }
    }

    /// Sets it and tells all who follow; nothing when what made it is gone.
    pub fn set(self, value: T) {
        self.at.set(hold(value));
    }

    /// Changes it and tells all who follow.
    pub fn update(self, by: impl FnOnce(&mut T)) {
        update(self.at, &mut By::new(by));
    }
}

fn signal(held: Held) -> graph::RwSignal<Held> {
    graph::RwSignal::new(held)
}

fn update(signal: graph::RwSignal<Held>, by: &mut dyn Change) {
    signal.update(|held| change(held, by));
}

handle! {
    /// A value worked out from others, told on only when it is another.
    Memo, graph::Memo<Held>
}
followed!(Memo);

impl<T: PartialEq + 'static> Memo<T> {
    /// A new one.
    pub fn new(work: impl Fn(()) -> T + 'static) -> Self {
        let at = memo(Box::new(Works(work)), another::<T>);
        let kind = PhantomData;
        Self { at, kind }
    }
}

/// How a memo's value is worked out.
trait Work {
    fn work(&self) -> Held;
}

struct Works<F>(F);

impl<T: 'static, F: Fn(()) -> T> Work for Works<F> {
    fn work(&self) -> Held {
        hold((self.0)(()))
    }
}

type Another = fn(&dyn Any, &dyn Any) -> bool;

fn another<T: PartialEq + 'static>(was: &dyn Any, is: &dyn Any) -> bool {
    kind::<T>(was) != kind::<T>(is)
}

fn memo(work: Box<dyn Work>, another: Another) -> graph::Memo<Held> {
    let work = SendWrapper::new(work);
    graph::Memo::new_owning(move |was: Option<Held>| {
        let is = work.work();
        let changed = was.is_none_or(|was| another(&**was, &**is));
        (is, changed)
    })
}

handle! {
    /// A value kept for as long as what made it is there.
    StoredValue, graph::StoredValue<Held>
}

impl<T: 'static> StoredValue<T> {
    /// A new one.
    pub fn new(value: T) -> Self {
        let at = store(hold(value));
        let kind = PhantomData;
        Self { at, kind }
    }

    /// The value.
    pub fn get_value(self) -> T
    where
        T: Clone,
    {
        kind::<T>(&*stored(self.at)).clone()
    }

    /// Looks at the value.
    pub fn with_value<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(kind(&*stored(self.at)))
    }

    /// Changes the value, if what made it is still there.
    pub fn try_update_value<R>(self, by: impl FnOnce(&mut T) -> R) -> Option<R> {
        let mut by = By::new(by);
        restore(self.at, &mut by);
        by.1
    }

    /// Changes the value.
    pub fn update_value(self, by: impl FnOnce(&mut T)) {
        let _ = self.try_update_value(by);
    }

    /// Lets the value go.
    pub fn dispose(self) {
        self.at.dispose();
    }
}

fn store(held: Held) -> graph::StoredValue<Held> {
    graph::StoredValue::new(held)
}

fn stored(at: graph::StoredValue<Held>) -> Rc<dyn Any> {
    share(&at.get_value())
}

fn restore(at: graph::StoredValue<Held>, by: &mut dyn Change) {
    let _ = at.try_update_value(|held| change(held, by));
}

/// What a [`Signal`] is read by.
trait Read<T> {
    fn read(&self) -> T;
}

impl<T, F: Fn() -> T> Read<T> for F {
    fn read(&self) -> T {
        self()
    }
}

/// Something that can be read and followed, whatever it is read from.
pub struct Signal<T: 'static>(StoredValue<Rc<dyn Read<T>>>);

impl<T> Clone for Signal<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Signal<T> {}

impl<T: 'static> Signal<T> {
    /// Read anew each time by a closure.
    pub fn derive(read: impl Fn() -> T + 'static) -> Self {
        Self(StoredValue::new(Rc::new(read) as Rc<dyn Read<T>>))
    }

    /// The value; what reads it is run again when it changes.
    pub fn get(self) -> T {
        self.0.get_value().read()
    }
}

impl<T: Clone + 'static> From<RwSignal<T>> for Signal<T> {
    fn from(signal: RwSignal<T>) -> Self {
        Self::derive(move || signal.get())
    }
}

impl<T: Clone + 'static> From<Memo<T>> for Signal<T> {
    fn from(memo: Memo<T>) -> Self {
        Self::derive(move || memo.get())
    }
}
