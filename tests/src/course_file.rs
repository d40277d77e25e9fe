//! The course file: what it may say, how it is refused, how it is edited, and that nothing
//! whatever makes the program fall over.

mod course_file {
    mod editing;
    mod mangled;
    mod reading;
    mod refusals;
}
