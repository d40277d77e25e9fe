//! The printed pages: every document of many courses, as a reader, a screen reader and a
//! printer meet it.

mod pages {
    mod awkward;
    mod days;
    mod look;
    mod many;
    mod standard;
    mod words;
}
