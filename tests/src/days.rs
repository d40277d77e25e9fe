//! The simulated days against models of their own: `models/days.py` and `models/schedules.py`.

mod days {
    mod case;
    mod chances;
    mod schedules;
}
