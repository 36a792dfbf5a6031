//! What happened: entries, what they are about, and folding them into a site or a visit.
