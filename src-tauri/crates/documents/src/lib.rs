//! documents.
