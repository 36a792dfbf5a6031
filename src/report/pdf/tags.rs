//! The structure tree: which part of the document each mark on a page is,
//! so that a screen reader can read the file in order (ISO 32000-1, 14.7).

use super::out::{Out, array, text};
use crate::quantity::sort_by;

/// Index of a node in [`Tags`].
pub(super) type NodeId = usize;

/// What a node is, by its name in 14.8.4.
pub(super) type Role = &'static str;

/// The root node, role Document.
pub(super) const ROOT: NodeId = 0;

enum Kid {
    Node(NodeId),
    Content { page: usize, mcid: i32 },
}

struct Node {
    role: Role,
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
            role: "Document",
            parent: ROOT,
            alt: None,
            covers: None,
            kids: Vec::new(),
        };
        Tags { nodes: vec![root] }
    }

    /// Adds a node below `parent`, after its other kids.
    pub(super) fn add(&mut self, parent: NodeId, role: Role) -> NodeId {
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
        let id = self.add(parent, "Figure");
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
    pub(super) fn role(&self, node: NodeId) -> Role {
        self.nodes[node].role
    }

    /// Writes every node, and below `tree_root` the array from content to node
    /// for each page.
    pub(super) fn write(&self, out: &mut Out, tree_root: usize, pages: &[usize]) {
        let names: Vec<usize> = self.nodes.iter().map(|_| out.name()).collect();
        for (id, node) in self.nodes.iter().enumerate() {
            let parent = match id {
                ROOT => tree_root,
                _ => names[node.parent],
            };
            let mut body = format!("<</Type/StructElem/S/{}/P {parent} 0 R", node.role);
            if let Some(alt) = &node.alt {
                body += "/Alt";
                body += &text(alt);
            }
            if let Some(covers) = node.covers {
                body += "/A<</O/Layout/BBox";
                body += &array(&covers);
                body += ">>";
            }
            body += match node.role {
                "L" => "/A<</O/List/ListNumbering/Disc>>",
                "TH" => "/A<</O/Table/Scope/Column>>",
                _ => "",
            };
            body += "/K[";
            for kid in &node.kids {
                body += &match *kid {
                    Kid::Node(kid) => format!("{} 0 R ", names[kid]),
                    Kid::Content { page, mcid } => {
                        format!("<</Type/MCR/Pg {} 0 R/MCID {mcid}>>", pages[page])
                    }
                };
            }
            out.object(names[id], &(body + "]>>"));
        }
        // Content ids count up from 0 on each page in the order drawn.
        let mut contents: Vec<(usize, i32, usize)> = Vec::new();
        for (id, node) in self.nodes.iter().enumerate() {
            contents.extend(node.kids.iter().filter_map(|kid| match *kid {
                Kid::Content { page, mcid } => Some((page, mcid, names[id])),
                Kid::Node(_) => None,
            }));
        }
        sort_by(&mut contents, |a, b| (a.0, a.1).cmp(&(b.0, b.1)));
        let mut owners = String::new();
        for page in 0..pages.len() {
            owners += &format!("{page} [");
            for (_, _, owner) in contents.iter().filter(|c| c.0 == page) {
                owners += &format!("{owner} 0 R ");
            }
            owners += "]";
        }
        let (root, next) = (names[ROOT], pages.len());
        out.object(
            tree_root,
            &format!(
                "<</Type/StructTreeRoot/K {root} 0 R/ParentTree<</Nums[{owners}]>>\
                 /ParentTreeNextKey {next}>>"
            ),
        );
    }
}
