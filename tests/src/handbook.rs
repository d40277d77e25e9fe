//! What handbooks, standards and plain arithmetic say, row by row, against our own sums.

mod handbook {
    mod bars;
    mod coordinates;
    mod heaps;
    mod lifting;
    mod masses;
    mod pairings;
    mod retaining;
    mod sections;
    mod setting_out;
    mod units;
    mod volumes;
    mod weather;
}
