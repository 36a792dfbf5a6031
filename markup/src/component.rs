//! A function to a part: a struct of its arguments.

use proc_macro2::TokenStream;
use quote::quote;
use syn::{Attribute, FnArg, Ident, ItemFn, Pat, Type, TypePath};

/// One argument.
struct Prop {
    docs: Vec<Attribute>,
    name: Ident,
    kind: Type,
    optional: bool,
    strip: bool,
    into: bool,
}

impl Prop {
    fn read(argument: &FnArg) -> syn::Result<Self> {
        let refuse = |why| Err(syn::Error::new_spanned(argument, why));
        let FnArg::Typed(argument) = argument else {
            return refuse("a part has no self");
        };
        let Pat::Ident(pattern) = &*argument.pat else {
            return refuse("an argument of a part is a name");
        };
        let mut prop = Self {
            docs: Vec::new(),
            name: pattern.ident.clone(),
            kind: (*argument.ty).clone(),
            optional: false,
            strip: true,
            into: false,
        };
        for attribute in &argument.attrs {
            if !attribute.path().is_ident("prop") {
                prop.docs.push(attribute.clone());
                continue;
            }
            attribute.parse_nested_meta(|meta| {
                if meta.path.is_ident("into") {
                    prop.into = true;
                } else if meta.path.is_ident("optional") {
                    prop.optional = true;
                } else if meta.path.is_ident("optional_no_strip") {
                    prop.optional = true;
                    prop.strip = false;
                } else {
                    return Err(meta.error("into, optional or optional_no_strip"));
                }
                Ok(())
            })?;
        }
        Ok(prop)
    }

    /// What an `Option` argument holds.
    fn held(&self) -> Option<Type> {
        let Type::Path(TypePath { path, .. }) = &self.kind else {
            return None;
        };
        let last = path.segments.last().filter(|s| s.ident == "Option")?;
        match &last.arguments {
            syn::PathArguments::AngleBracketed(of) => match of.args.first()? {
                syn::GenericArgument::Type(of) => Some(of.clone()),
                _ => None,
            },
            _ => None,
        }
    }

    fn field(&self) -> TokenStream {
        let Self { name, kind, .. } = self;
        match self.optional {
            true => quote!(#name: #kind),
            false => quote!(#name: ::core::option::Option<#kind>),
        }
    }

    fn setter(&self) -> TokenStream {
        let Self { docs, name, .. } = self;
        let held = self.held().filter(|_| self.optional && self.strip);
        let wrap = held.is_some() || !self.optional;
        let kind = held.unwrap_or_else(|| self.kind.clone());
        let (kind, value) = match self.into {
            true => (
                quote!(impl ::core::convert::Into<#kind>),
                quote!(#name.into()),
            ),
            false => (quote!(#kind), quote!(#name)),
        };
        let value = match wrap {
            true => quote!(::core::option::Option::Some(#value)),
            false => value,
        };
        quote!(#(#docs)* pub fn #name(&mut self, #name: #kind) { self.#name = #value; })
    }

    fn taken(&self) -> TokenStream {
        let name = &self.name;
        match self.optional {
            true => quote!(let #name = self.#name;),
            false => quote! {
                // `complete` saw to it when this was compiled.
                let ::core::option::Option::Some(#name) = self.#name else {
                    return ::core::default::Default::default();
                };
            },
        }
    }
}

/// The struct for a function.
pub fn expand(item: TokenStream) -> syn::Result<TokenStream> {
    let ItemFn {
        attrs,
        vis,
        sig,
        block,
        ..
    } = syn::parse2(item)?;
    let props = sig
        .inputs
        .iter()
        .map(Prop::read)
        .collect::<syn::Result<Vec<_>>>()?;
    let (name, output) = (&sig.ident, &sig.output);
    let fields = props.iter().map(Prop::field);
    let setters = props.iter().map(Prop::setter);
    let taken = props.iter().map(Prop::taken);
    let names = props.iter().map(|p| &p.name);
    let needs = props.iter().filter(|p| !p.optional);
    let needs = needs.map(|p| p.name.to_string());
    Ok(quote! {
        #(#attrs)*
        #vis struct #name { #(#fields),* }

        #[allow(missing_docs, clippy::new_without_default, clippy::too_many_arguments)]
        impl #name {
            /// What may not be left out.
            pub const NEEDS: &'static [&'static str] = &[#(#needs),*];

            /// Nothing given yet.
            pub fn new() -> Self {
                Self { #(#names: ::core::default::Default::default()),* }
            }

            #(#setters)*

            /// Draws it.
            pub fn view(self) #output {
                #(#taken)*
                crate::app::view::untracked(move || #output #block)
            }
        }
    })
}
