//! What may stand in markup as a child or as the value of an attribute. The
//! second name of each trait only tells closures from values.

use std::marker::PhantomData;

use super::graph::Signal;
use super::slot::Say;
use super::{Draw, Text, Value, View};

/// A value.
pub struct Plain;

/// A closure that answers something of the kind `M`.
pub struct Live<M>(M);

/// What may be a child.
pub trait Child<M> {
    /// The child as a view.
    fn view(self) -> View;
}

impl Child<Plain> for View {
    fn view(self) -> View {
        self
    }
}

impl Child<Plain> for &'static str {
    fn view(self) -> View {
        View::Text(Text::Borrowed(self))
    }
}

impl Child<Plain> for String {
    fn view(self) -> View {
        View::Text(Text::Owned(self))
    }
}

impl Child<Plain> for Signal<String> {
    fn view(self) -> View {
        View::Live(Box::new(move || self.get().view()))
    }
}

impl<M, T: Child<M>> Child<M> for Option<T> {
    fn view(self) -> View {
        match self {
            Some(child) => child.view(),
            None => View::default(),
        }
    }
}

impl Child<Plain> for Vec<View> {
    fn view(self) -> View {
        View::Many(self)
    }
}

impl<M: 'static, R: Child<M> + 'static, F: FnMut() -> R + 'static> Child<Live<M>> for F {
    fn view(self) -> View {
        View::Live(Box::new(Again(self, PhantomData)))
    }
}

/// A closure that answers what can be a child.
struct Again<F, M, R>(F, PhantomData<fn(M) -> R>);

impl<M, R: Child<M>, F: FnMut() -> R> Draw for Again<F, M, R> {
    fn draw(&mut self) -> View {
        (self.0)().view()
    }
}

/// Views in a row, as one.
pub trait CollectView {
    /// All of them.
    fn collect_view(self) -> View;
}

impl<I: IntoIterator<Item = View>> CollectView for I {
    fn collect_view(self) -> View {
        let mut all = Vec::new();
        for view in self {
            all.push(view);
        }
        View::Many(all)
    }
}

/// What may be an attribute.
pub trait Attr<M> {
    /// The attribute's value, now or kept up to date.
    fn value(self) -> Value;
}

impl<T: Written> Attr<Plain> for T {
    fn value(self) -> Value {
        Value::Fixed(self.written())
    }
}

impl<R: Written + 'static, F: FnMut() -> R + 'static> Attr<Live<()>> for F {
    fn value(self) -> Value {
        Value::Live(Box::new(Again(self, PhantomData::<fn(()) -> R>)))
    }
}

impl<R: Written, F: FnMut() -> R> Say for Again<F, (), R> {
    fn say(&mut self) -> Option<Text> {
        (self.0)().written()
    }
}

/// What an attribute can say; nothing when it is not there.
pub trait Written {
    /// As text.
    fn written(self) -> Option<Text>;
}

impl Written for &'static str {
    fn written(self) -> Option<Text> {
        Some(Text::Borrowed(self))
    }
}

impl Written for String {
    fn written(self) -> Option<Text> {
        Some(Text::Owned(self))
    }
}

impl Written for f64 {
    fn written(self) -> Option<Text> {
        Some(Text::Owned(self.to_string()))
    }
}

impl Written for bool {
    fn written(self) -> Option<Text> {
        self.then_some(Text::Borrowed(""))
    }
}

impl<T: Written> Written for Option<T> {
    fn written(self) -> Option<Text> {
        self?.written()
    }
}
