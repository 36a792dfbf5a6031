//! Elements to templates.
//!
//! A template is a row of instructions, each one character below the space and
//! then a name, read by `app/view/template.rs`:
//!
//! | | |
//! |---|---|
//! | 1, 2 | open an HTML or an SVG element |
//! | 3 | close it |
//! | 4, 5 | a fixed attribute's name, its value |
//! | 6 | a fixed text |
//! | 7 to 12 | from the next slot: attribute, class, style, property, content, event |
//! | 14 | the next slot is a child |

use proc_macro2::{Ident, Span, TokenStream};
use quote::{ToTokens, quote, quote_spanned};
use rstml::node::{KeyedAttribute, Node, NodeAttribute, NodeBlock, NodeElement};
use rstml::{Parser, ParserConfig};
use syn::spanned::Spanned;
use syn::{Expr, Lit, Stmt};

/// Elements of SVG that the app draws with.
const SVG: &[&str] = &[
    "svg", "g", "line", "path", "circle", "rect", "text", "polyline",
];

/// Elements of HTML that hold nothing and are not closed.
const VOID: &[&str] = &["br", "hr", "img", "input"];

/// Where `View` and its kin are.
fn home() -> TokenStream {
    quote!(crate::app::view)
}

/// The expression that `markup!` stands for.
pub fn compile(tokens: TokenStream) -> TokenStream {
    let config = ParserConfig::default().recover_block(true);
    let (nodes, errors) = Parser::new(config).parse_recoverable(tokens).split_vec();
    let errors = errors.into_iter().map(|e| e.emit_as_expr_tokens());
    let view = views(&nodes);
    quote!({ #(#errors;)* #view })
}

/// Several nodes side by side, as one view.
fn views(nodes: &[Node]) -> TokenStream {
    let home = home();
    match nodes {
        [] => quote!(#home::View::default()),
        [one] => view(one),
        several => {
            let several = several.iter().map(view);
            quote!(#home::many(::std::boxed::Box::new([#(#several),*])))
        }
    }
}

fn view(node: &Node) -> TokenStream {
    let home = home();
    match node {
        Node::Element(element) if is_component(element) => component(element),
        Node::Element(element) => {
            let mut template = Template::default();
            template.element(element);
            let Template { code, slots } = template;
            let held = Ident::new("slots", Span::mixed_site());
            let slots = slots.into_iter().map(|slot| slot(&held));
            quote!({
                let mut #held = #home::Slots::of(#code);
                #(#slots)*
                #held.view()
            })
        }
        Node::Fragment(fragment) => views(&fragment.children),
        Node::Block(block) => {
            let value = unbraced(block);
            quote!(#home::Child::view(#value))
        }
        other => quote!(#home::Child::view(#other)),
    }
}

/// A block that is one expression, without its braces.
fn unbraced(block: &NodeBlock) -> TokenStream {
    match block.try_block().map(|block| block.stmts.as_slice()) {
        Some([Stmt::Expr(one, None)]) => one.to_token_stream(),
        _ => block.to_token_stream(),
    }
}

type Slot = Box<dyn FnOnce(&Ident) -> TokenStream>;

#[derive(Default)]
struct Template {
    code: String,
    slots: Vec<Slot>,
}

impl Template {
    fn op(&mut self, op: u8, name: &str) {
        self.code.push(char::from(op));
        self.code.push_str(name);
    }

    fn slot(&mut self, of: impl FnOnce(&Ident) -> TokenStream + 'static) {
        self.slots.push(Box::new(of));
    }

    fn fault(&mut self, at: Span, why: &'static str) {
        self.slot(move |_| quote_spanned!(at=> compile_error!(#why);));
    }

    fn element(&mut self, element: &NodeElement<rstml::Infallible>) {
        let name = element.name().to_string();
        let svg = SVG.contains(&name.as_str());
        self.op(if svg { 2 } else { 1 }, &name);
        for attribute in element.attributes() {
            match attribute {
                NodeAttribute::Attribute(attribute) => self.attribute(attribute),
                NodeAttribute::Block(block) => {
                    self.fault(block.span(), "an attribute needs a name");
                }
            }
        }
        if VOID.contains(&name.as_str()) && !element.children.is_empty() {
            self.fault(element.span(), "this element holds nothing");
        }
        element.children.iter().for_each(|child| self.child(child));
        self.op(3, "");
    }

    fn attribute(&mut self, attribute: &KeyedAttribute) {
        let home = home();
        let key = attribute.key.to_string();
        let is_bool = |value: &Expr| matches!(value, Expr::Lit(l) if matches!(l.lit, Lit::Bool(_)));
        let fixed = match attribute.value().is_some_and(is_bool) {
            true => None,
            false => attribute.value_literal_string(),
        };
        let value = attribute.value().map(ToTokens::to_token_stream);
        let (op, name) = match key.split_once(':') {
            Some(("class", name)) => (8, name),
            Some(("style", name)) => (9, name),
            Some(("prop", name)) => (10, name),
            Some(("on", name)) => (12, name),
            Some(_) => return self.fault(attribute.key.span(), "no such kind of attribute"),
            None if key == "inner_html" => (11, ""),
            None if key == "style" => {
                return self.fault(
                    attribute.key.span(),
                    "the page's policy refuses it: style:x=",
                );
            }
            None => (7, key.as_str()),
        };
        match (op, fixed, value) {
            (7, Some(text), _) if !text.contains(char::is_control) => {
                self.op(4, name);
                self.op(5, &text);
            }
            (7, None, None) => {
                self.op(4, name);
                self.op(5, "");
            }
            (_, _, None) => self.fault(attribute.key.span(), "this needs a value"),
            (12, _, Some(does)) => {
                self.op(op, name);
                self.slot(move |slots| quote!(#slots.on(#does);));
            }
            (_, _, Some(value)) => {
                self.op(op, name);
                self.slot(move |slots| {
                    let at = value.span();
                    quote_spanned!(at=> #slots.value(#home::Attr::value(#value));)
                });
            }
        }
    }

    fn child(&mut self, child: &Node) {
        let home = home();
        match child {
            Node::Element(element) if !is_component(element) => self.element(element),
            Node::Text(text) if !text.value_string().contains(char::is_control) => {
                self.op(6, &text.value_string());
            }
            Node::Comment(_) => {}
            Node::Block(block) => {
                self.op(14, "");
                let value = unbraced(block);
                self.slot(move |slots| {
                    let at = value.span();
                    quote_spanned!(at=> #slots.child(#home::Child::view(#value));)
                });
            }
            other => {
                self.op(14, "");
                let view = view(other);
                self.slot(move |slots| quote!(#slots.child(#view);));
            }
        }
    }
}

fn is_component(element: &NodeElement<rstml::Infallible>) -> bool {
    let name = element.name().to_string();
    let last = name.rsplit("::").next().unwrap_or_default();
    last.starts_with(|c: char| c.is_uppercase())
}

/// A part: its arguments set by name, then drawn.
fn component(element: &NodeElement<rstml::Infallible>) -> TokenStream {
    let home = home();
    let name = element.name();
    let part = Ident::new("part", Span::mixed_site());
    let mut given = Vec::new();
    let mut sets = Vec::new();
    for attribute in element.attributes() {
        let NodeAttribute::Attribute(attribute) = attribute else {
            return quote!(compile_error!("an argument needs a name"));
        };
        let key = attribute.key.to_string();
        let set = Ident::new(&key, attribute.key.span());
        let value = match attribute.value() {
            Some(value) => value.to_token_stream(),
            None => set.to_token_stream(),
        };
        given.push(key);
        sets.push(quote!(#part.#set(#value);));
    }
    if !element.children.is_empty() {
        let children = views(&element.children);
        given.push("children".to_owned());
        sets.push(quote!(#part.children(::std::boxed::Box::new(move || #children));));
    }
    quote!({
        const _: () = #home::complete(#name::NEEDS, &[#(#given),*]);
        let mut #part = #name::new();
        #(#sets)*
        #part.view()
    })
}
