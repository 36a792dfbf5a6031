//! Where entries are kept: the port, its memory twin, and the IndexedDB one.
