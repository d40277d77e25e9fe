//! The sums against a second road to the same answers, on walls and courses drawn at random.

mod geometry {
    mod alike;
    mod days;
    mod drawn;
    mod line;
    mod model;
    mod more_or_less;
    mod people;
    mod spelling;
    mod walls;
}
