//! The printed pages: every document of many courses, as a reader, a screen reader and a
//! printer meet it.

mod pages {
    mod advice;
    mod american;
    mod area;
    mod awkward;
    mod clear;
    mod days;
    mod field;
    mod large;
    mod letters;
    mod look;
    mod many;
    mod office;
    mod pictures;
    mod pieces;
    mod private;
    mod reading;
    mod standard;
    mod words;
}
