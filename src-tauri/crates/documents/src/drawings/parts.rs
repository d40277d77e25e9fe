//! Drawings in as many pictures as it takes for their letters to be read in large print.

use super::{Drawings, Picture, clock};
use crate::Edition;
use drawing::{Room, Scene, Timetable};

impl Drawings<'_> {
    /// The wall seen from the side, a long one in stretches.
    pub(crate) fn elevation_in_parts(&self) -> Vec<Picture> {
        let (plan, given) = self.planned();
        let parts = |room| drawing::elevation_in_parts(plan, given, room);
        let parts = self.in_parts(self.elevation_scene(), self.rooms.along, parts);
        let parts = parts.into_iter();
        parts.map(|part| self.picture_with_names(part)).collect()
    }

    /// The setting-out, a long one in stretches.
    pub(crate) fn setting_out_in_parts(&self) -> Vec<Picture> {
        let (plan, given) = self.planned();
        let room = self.rooms.setting_out;
        let whole = self.drawn(room, |room| drawing::setting_out(plan, given, room));
        let parts = |room| drawing::setting_out_in_parts(plan, given, room);
        self.pictures(self.in_parts(whole, room, parts))
    }

    /// Where the stone lies, and its key apart where both together leave no room.
    pub(crate) fn heap_plan_in_parts(&self) -> Vec<Picture> {
        let (plan, given) = self.planned();
        let parts = |room| drawing::heap_plan_in_parts(plan, given, &plan.heaps, room);
        let room = self.rooms.heap_plan;
        self.pictures(self.in_parts(self.heap_plan_scene(), room, parts))
    }

    /// The days as bars. None in large print where a day is too full for that: the days stand
    /// there by the clock as well.
    pub(crate) fn timetable_in_parts(&self) -> Vec<Picture> {
        let (plan, given) = self.planned();
        let tables = &self.course.library.tables;
        let timetable = Timetable::of(plan, given, tables, clock(self.course));
        let parts = drawing::timetable_in_parts(&timetable, self.rooms.timetable);
        let large = self.course.edition == Edition::LargePrint;
        let wanted = self.course.edition.enlarged();
        if large && parts.iter().any(|part| self.printed(part) < wanted) {
            return Vec::new();
        }
        self.pictures(parts)
    }

    fn pictures(&self, parts: Vec<Scene>) -> Vec<Picture> {
        parts.into_iter().map(|part| self.picture(part)).collect()
    }

    /// A drawing whole, or in large print its parts one by one where its letters would come out
    /// smaller than theirs. Each part may take a page, on a lesson's page as well.
    fn in_parts(&self, whole: Scene, room: Room, parts: impl Fn(Room) -> Vec<Scene>) -> Vec<Scene> {
        let wanted = self.course.edition.enlarged();
        if self.course.edition == Edition::Usual || wanted <= self.printed(&whole) {
            return vec![whole];
        }
        let [page, _] = self.larger;
        let parts = parts(page.unwrap_or(room));
        if parts.is_empty() { vec![whole] } else { parts }
    }
}
