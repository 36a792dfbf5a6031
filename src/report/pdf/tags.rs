//! The structure tree: which part of the document each mark on a page is,
//! so that a screen reader can read the file in order (ISO 32000-1, 14.7).

use pdf_writer::types::{ListNumbering, StructRole, TableHeaderScope};
use pdf_writer::{Finish, Pdf, Rect, Ref, TextStr};

use crate::quantity::sort_by;

/// Index of a node in [`Tags`].
pub(super) type NodeId = usize;

/// The root node, role Document.
pub(super) const ROOT: NodeId = 0;

enum Kid {
    Node(NodeId),
    Content { page: usize, mcid: i32 },
}

struct Node {
    role: StructRole,
    parent: NodeId,
    alt: Option<String>,
    /// What a figure covers: left, foot, right, top.
    covers: Option<[f32; 4]>,
    kids: Vec<Kid>,
}

/// The tree while it grows.
pub(super) struct Tags {
    nodes: Vec<Node>,
}

impl Tags {
    /// A tree with nothing but its root.
    pub(super) fn new() -> Self {
        let root = Node {
            role: StructRole::Document,
            parent: ROOT,
            alt: None,
            covers: None,
            kids: Vec::new(),
        };
        Tags { nodes: vec![root] }
    }

    /// Adds a node below `parent`, after its other kids.
    pub(super) fn add(&mut self, parent: NodeId, role: StructRole) -> NodeId {
        let id = self.nodes.len();
        self.nodes.push(Node {
            role,
            parent,
            alt: None,
            covers: None,
            kids: Vec::new(),
        });
        self.nodes[parent].kids.push(Kid::Node(id));
        id
    }

    /// Adds a figure with its description below `parent`.
    pub(super) fn figure(&mut self, parent: NodeId, alt: &str) -> NodeId {
        let id = self.add(parent, StructRole::Figure);
        self.nodes[id].alt = Some(alt.to_owned());
        id
    }

    /// Stretches a figure's box to a point of the page.
    pub(super) fn cover(&mut self, node: NodeId, x: f32, y: f32) {
        let node = &mut self.nodes[node];
        if node.alt.is_some() {
            let [left, foot, right, top] = node.covers.unwrap_or([x, y, x, y]);
            node.covers = Some([left.min(x), foot.min(y), right.max(x), top.max(y)]);
        }
    }

    /// Notes that content `mcid` of `page` belongs to `node`.
    pub(super) fn content(&mut self, node: NodeId, page: usize, mcid: i32) {
        self.nodes[node].kids.push(Kid::Content { page, mcid });
    }

    /// The role of a node.
    pub(super) fn role(&self, node: NodeId) -> StructRole {
        self.nodes[node].role
    }

    /// Writes every node and, for each page, the array from content to node.
    /// Returns the root's reference and those of the arrays.
    pub(super) fn write(
        &self,
        pdf: &mut Pdf,
        alloc: &mut Ref,
        tree_root: Ref,
        pages: &[Ref],
    ) -> (Ref, Vec<Ref>) {
        let refs: Vec<Ref> = self.nodes.iter().map(|_| alloc.bump()).collect();
        let mut owners: Vec<Vec<Ref>> = vec![Vec::new(); pages.len()];
        for (id, node) in self.nodes.iter().enumerate() {
            let mut elem = pdf.struct_element(refs[id]);
            elem.kind(node.role);
            elem.parent(if id == ROOT {
                tree_root
            } else {
                refs[node.parent]
            });
            if let Some(alt) = &node.alt {
                elem.alt(TextStr(alt));
            }
            if let Some([left, foot, right, top]) = node.covers {
                elem.attributes()
                    .push()
                    .layout()
                    .bbox(Rect::new(left, foot, right, top));
            }
            if node.role == StructRole::L {
                elem.attributes()
                    .push()
                    .list()
                    .list_numbering(ListNumbering::Disc);
            }
            if node.role == StructRole::TH {
                elem.attributes()
                    .push()
                    .table()
                    .scope(TableHeaderScope::Column);
            }
            let mut kids = elem.children();
            for kid in &node.kids {
                match *kid {
                    Kid::Node(kid) => {
                        kids.struct_element(refs[kid]);
                    }
                    Kid::Content { page, mcid } => {
                        kids.marked_content_ref()
                            .page(pages[page])
                            .marked_content_id(mcid);
                    }
                }
            }
            kids.finish();
            elem.finish();
        }
        // Content ids count up from 0 on each page in the order drawn.
        let mut contents: Vec<(usize, i32, Ref)> = Vec::new();
        for (id, node) in self.nodes.iter().enumerate() {
            contents.extend(node.kids.iter().filter_map(|kid| match *kid {
                Kid::Content { page, mcid } => Some((page, mcid, refs[id])),
                Kid::Node(_) => None,
            }));
        }
        sort_by(&mut contents, |a, b| (a.0, a.1).cmp(&(b.0, b.1)));
        for (page, _, owner) in contents {
            owners[page].push(owner);
        }
        let arrays = owners
            .into_iter()
            .map(|owners| {
                let id = alloc.bump();
                pdf.indirect(id).array().items(owners);
                id
            })
            .collect();
        (refs[ROOT], arrays)
    }
}
