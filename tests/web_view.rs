//! In a browser: views are drawn, kept up to date in place, and taken away
//! with everything that kept them up to date.
#![cfg(target_arch = "wasm32")]

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::{Get, RwSignal, Set, document};
use leptos::task::tick;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{Element, HtmlElement};

/// Where `markup!` looks for views.
mod app {
    pub use coldsump::app::view;
}

use app::view::{self, CollectView, View, component, markup};

wasm_bindgen_test_configure!(run_in_browser);

fn find(selector: &str) -> Element {
    let found = document().query_selector(selector).expect("a selector");
    found.unwrap_or_else(|| panic!("nothing is {selector}"))
}

fn click(selector: &str) {
    find(selector).unchecked_into::<HtmlElement>().click();
}

#[wasm_bindgen_test]
async fn what_is_fixed_and_what_is_given_stand_together() {
    view::mount(|| {
        markup! {
            <section id="fixed" aria-label=format!("a {}", 1) hidden=false class:on=true>
                <p style:height="3px">"text " {7.to_string()} {None::<String>}</p>
                <svg viewBox="0 0 1 1"><line x1=0.5 /></svg>
                <input prop:value="typed" />
                <ol inner_html="<li>one</li>"></ol>
            </section>
        }
    });
    let section = find("#fixed");
    assert_eq!(section.get_attribute("aria-label").as_deref(), Some("a 1"));
    assert!(!section.has_attribute("hidden"));
    assert_eq!(section.class_name(), "on");
    let p: HtmlElement = find("#fixed p").unchecked_into();
    assert_eq!(p.text_content().as_deref(), Some("text 7"));
    assert_eq!(p.style().get_property_value("height").as_deref(), Ok("3px"));
    let line = find("#fixed line");
    assert_eq!(
        line.namespace_uri().as_deref(),
        Some("http://www.w3.org/2000/svg")
    );
    assert_eq!(line.get_attribute("x1").as_deref(), Some("0.5"));
    let typed = js_sys::Reflect::get(&find("#fixed input"), &"value".into());
    assert_eq!(
        typed.ok().and_then(|v| v.as_string()).as_deref(),
        Some("typed")
    );
    assert_eq!(find("#fixed li").text_content().as_deref(), Some("one"));
}

#[component]
fn Named(#[prop(into)] name: String, #[prop(optional)] tail: Option<u8>) -> View {
    markup! { <b id="named">{name} {tail.map(|t| t.to_string())}</b> }
}

#[wasm_bindgen_test]
async fn a_part_takes_its_arguments_by_name() {
    view::mount(|| markup! { <Named name="drop" tail=3 /> });
    assert_eq!(find("#named").text_content().as_deref(), Some("drop3"));
}

#[wasm_bindgen_test]
async fn a_view_like_the_old_one_keeps_its_element_and_the_focus() {
    let count = RwSignal::new(1);
    let taps = Rc::new(Cell::new(0));
    let seen = Rc::clone(&taps);
    view::mount(move || {
        let button = move || {
            let (now, seen) = (count.get(), Rc::clone(&seen));
            markup! {
                <button id="kept" title=now.to_string() on:click=move |_| seen.set(now)>
                    {now.to_string()}
                </button>
            }
        };
        markup! { <div>{button}</div> }
    });
    let button: HtmlElement = find("#kept").unchecked_into();
    button.focus().expect("a button takes the focus");
    click("#kept");
    assert_eq!(taps.get(), 1);
    count.set(2);
    tick().await;
    assert_eq!(button.text_content().as_deref(), Some("2"));
    assert_eq!(button.title(), "2");
    assert_eq!(
        document().active_element().as_ref(),
        Some(button.unchecked_ref::<Element>())
    );
    click("#kept");
    assert_eq!(taps.get(), 2, "the new closure answers, once");
}

#[wasm_bindgen_test]
async fn a_choice_that_a_person_changed_still_follows() {
    let chosen = RwSignal::new(1);
    view::mount(move || {
        let option = move |n: u8| {
            markup! { <option selected=move || chosen.get() == n>{n.to_string()}</option> }
        };
        markup! { <select id="choice">{[1, 2, 3].map(option).collect_view()}</select> }
    });
    let select = find("#choice");
    let said = || js_sys::Reflect::get(&select, &"value".into()).map(|v| v.as_string());
    assert_eq!(said(), Ok(Some("1".to_owned())));
    let by_person = js_sys::Reflect::set(&select, &"value".into(), &"3".into());
    assert_eq!((by_person, said()), (Ok(true), Ok(Some("3".to_owned()))));
    for n in [2, 1, 3] {
        chosen.set(n);
        tick().await;
        assert_eq!(said(), Ok(Some(n.to_string())));
    }
}

#[wasm_bindgen_test]
async fn a_list_grows_and_shrinks_before_what_follows() {
    let count = RwSignal::new(2);
    view::mount(move || {
        let rows = move || {
            (0..count.get())
                .map(|n| markup! { <li>{n.to_string()}</li> })
                .collect_view()
        };
        markup! { <ul id="list">{rows}<li>"end"</li></ul> }
    });
    let said = || find("#list").text_content().unwrap_or_default();
    assert_eq!(said(), "01end");
    for (many, all) in [(4, "0123end"), (0, "end"), (1, "0end")] {
        count.set(many);
        tick().await;
        assert_eq!(said(), all);
    }
}

#[wasm_bindgen_test]
async fn what_was_taken_away_neither_hears_nor_reads() {
    let shown = RwSignal::new(true);
    let count = RwSignal::new(0);
    let (reads, taps) = (Rc::new(Cell::new(0)), Rc::new(Cell::new(0)));
    let (read, tapped) = (Rc::clone(&reads), Rc::clone(&taps));
    view::mount(move || {
        let child = move || {
            let (read, tapped) = (Rc::clone(&read), Rc::clone(&tapped));
            let title = move || {
                read.set(read.get() + 1);
                count.get().to_string()
            };
            shown.get().then(|| {
                markup! {
                    <button id="gone" title=title
                        on:click=move |_| tapped.set(tapped.get() + 1)></button>
                }
            })
        };
        markup! { <div>{child}</div> }
    });
    let button: HtmlElement = find("#gone").unchecked_into();
    count.set(1);
    tick().await;
    assert_eq!((button.title().as_str(), reads.get()), ("1", 2));
    shown.set(false);
    tick().await;
    assert!(!button.is_connected());
    count.set(2);
    tick().await;
    button.click();
    assert_eq!((reads.get(), taps.get()), (2, 0));
    // Only this test still holds what the closures held.
    assert_eq!(Rc::strong_count(&taps), 2, "the view's own and the test's");
}
