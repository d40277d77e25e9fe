//! A wall reckoned a second time: plain numbers, sums of slices, nothing shared with our sums.

use super::drawn::Wall;
use super::line::{DEEPEST, Stretch, Surveyed};

/// Slices a section is cut into, lying, and a stretch of even ground, standing.
const LYING: u32 = 200;
const STANDING: u32 = 200;

/// Share of the cope that is solid; what the course file's makers promise as default.
const COPE_FILL: f64 = 0.7;

/// What a bar goes into the ground below the footing where the course does not say.
const EMBEDMENT: f64 = 0.45;

pub fn metres(mm: u32) -> f64 {
    f64::from(mm) / 1000.0
}

/// The middles of so many equal slices between two ends, and how thick each is.
fn slices(from: f64, to: f64, count: u32) -> impl Iterator<Item = (f64, f64)> {
    let thick = (to - from) / f64::from(count);
    (0..count).map(move |slice| (from + (f64::from(slice) + 0.5) * thick, thick))
}

/// A stretch of the line without a joint or a surveyed station inside.
struct Piece {
    from: f64,
    to: f64,
    /// How much longer a line to the right is than the centre line, for each metre that it
    /// lies off: one over the radius, and less than nothing where the line turns right.
    longer: f64,
}

/// What stands at one station: levels of the ground at its centre, left and right, and of the top.
pub struct Standing {
    pub ground: f64,
    pub faces: [f64; 2],
    pub top: f64,
}

fn longer(stretch: &Stretch) -> f64 {
    let turn = |left: bool| if left { 1.0 } else { -1.0 };
    stretch
        .bend
        .map_or(0.0, |bend| turn(bend.left) / metres(bend.radius))
}

/// A strip that lies across the wall, for each metre of the centre line: its width times the
/// mean of the lengths of its two edges.
fn strip(left: f64, right: f64, longer: f64) -> f64 {
    let edges = (1.0 - left * longer) + (1.0 + right * longer);
    (left + right) * edges / 2.0
}

impl Wall {
    pub fn length(&self) -> f64 {
        metres(self.line.length())
    }

    /// From the middle of the top to a face, so much below the top.
    fn half(&self, side: usize, below_top: f64) -> f64 {
        metres(self.top) / 2.0 + self.batter[side].map_or(0.0, |n| below_top / n)
    }

    /// The width at a height above the ground at station 0.
    pub fn width(&self, above_ground: f64) -> f64 {
        let below_top = metres(self.height) - above_ground;
        self.half(0, below_top) + self.half(1, below_top)
    }

    /// The section of the height given.
    pub fn area(&self) -> f64 {
        self.section(0.0, metres(self.height), 0.0)
    }

    /// A slice of the wall one metre long, from a height above its ground to its top.
    fn section(&self, from: f64, height: f64, longer: f64) -> f64 {
        slices(from, height, LYING)
            .map(|(at, thick)| {
                let [left, right] = [0, 1].map(|side| self.half(side, height - at));
                strip(left, right, longer) * thick
            })
            .sum()
    }

    /// The level of the ground: straight between stations, the nearest one beyond them.
    fn ground_level(&self, station: f64, of: impl Fn(&Surveyed) -> i32) -> f64 {
        let level = |surveyed: &Surveyed| f64::from(of(surveyed)) / 1000.0;
        let after = |surveyed: &&Surveyed| station < metres(surveyed.station);
        let next = self.ground.iter().find(after);
        let last = self.ground.iter().rev().find(|surveyed| !after(surveyed));
        match (last, next) {
            (None, None) => 0.0,
            (Some(one), None) | (None, Some(one)) => level(one),
            (Some(last), Some(next)) => {
                let [from, to] = [last, next].map(|surveyed| metres(surveyed.station));
                let share = (station - from) / (to - from);
                level(last) * (1.0 - share) + level(next) * share
            }
        }
    }

    pub fn standing(&self, station: f64) -> Standing {
        let ground = self.ground_level(station, |surveyed| surveyed.level);
        let face = |side: usize| {
            self.ground_level(station, |surveyed| {
                surveyed.faces[side].unwrap_or(surveyed.level)
            })
        };
        let under_top = if self.level_top {
            self.ground_level(0.0, |surveyed| surveyed.level)
        } else {
            ground
        };
        Standing {
            ground,
            faces: [face(0), face(1)],
            top: under_top + metres(self.height),
        }
    }

    /// Centre line to bar, at ground that lies at the level of that face.
    pub fn offset(&self, side: usize, standing: &Standing) -> f64 {
        self.half(side, standing.top - standing.faces[side])
    }

    fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::new();
        let mut from = 0;
        for stretch in &self.line.stretches {
            let to = from + stretch.length;
            let surveyed = self.ground.iter().map(|surveyed| surveyed.station);
            let mut cuts = vec![from];
            cuts.extend(surveyed.filter(|station| from < *station && *station < to));
            cuts.push(to);
            pieces.extend(cuts.windows(2).map(|cut| Piece {
                from: metres(cut[0]),
                to: metres(cut[1]),
                longer: longer(stretch),
            }));
            from = to;
        }
        pieces
    }

    /// The sum over thin standing slices of the whole line: of a height and a bend, for each
    /// metre of the centre line.
    fn along(&self, of: impl Fn(f64, f64) -> f64) -> f64 {
        let mut sum = 0.0;
        for piece in self.pieces() {
            for (station, thick) in slices(piece.from, piece.to, STANDING) {
                let standing = self.standing(station);
                sum += of(standing.top - standing.ground, piece.longer) * thick;
            }
        }
        sum
    }

    pub fn body(&self) -> f64 {
        self.along(|height, longer| self.section(0.0, height, longer))
    }

    pub fn footing_volume(&self) -> f64 {
        self.footing.map_or(0.0, |[depth, outset]| {
            let wide = |height, longer| {
                let [left, right] = [0, 1].map(|side| self.half(side, height) + metres(outset));
                strip(left, right, longer)
            };
            self.along(wide) * metres(depth)
        })
    }

    pub fn cope_volume(&self) -> f64 {
        metres(self.top) * metres(self.cope.unwrap_or(0)) * self.length()
    }

    /// One face, plumb.
    pub fn face_area(&self) -> f64 {
        self.along(|height, _| height)
    }

    /// A raked end steps back one along for one up: so far from it nothing stands higher than
    /// that above its ground. Two raked ends answer for half of the wall each.
    pub fn raked_away(&self) -> f64 {
        let length = self.length();
        let own = length / if self.raked == [true; 2] { 2.0 } else { 1.0 };
        // Farther off than the wall is high anywhere, nothing is left out.
        let reach = own.min(metres(self.height + DEEPEST));
        let mut sum = 0.0;
        for end in [0, 1].into_iter().filter(|end| self.raked[*end]) {
            for piece in self.pieces() {
                let from_start = [piece.from, piece.to];
                let from_finish = [length - piece.to, length - piece.from];
                let away = [from_start, from_finish][end].map(|away| away.min(reach));
                if away[0] == away[1] {
                    continue;
                }
                for (away, thick) in slices(away[0], away[1], 3000) {
                    let standing = self.standing([away, length - away][end]);
                    let height = standing.top - standing.ground;
                    sum += self.section(away.min(height), height, piece.longer) * thick;
                }
            }
        }
        sum
    }

    fn share(&self, which: usize) -> f64 {
        f64::from(self.stone.shares[which]) / 100.0
    }

    /// Throughs in a row: the spacing that fits best, one at least.
    pub fn throughs_in_a_row(&self) -> f64 {
        let twice = 2 * self.line.length() / self.through_spacing;
        f64::from(twice.div_ceil(2).max(1))
    }

    pub fn through_length(&self, row: u32) -> f64 {
        self.width(metres(row)) + 2.0 * metres(self.through[2])
    }

    fn throughs_t(&self) -> f64 {
        let cross = metres(self.through[0]) * metres(self.through[1]);
        let all: f64 = self.rows.iter().map(|&row| self.through_length(row)).sum();
        all * cross * self.throughs_in_a_row() * f64::from(self.stone.density) / 1000.0
    }

    /// Tonnes of footing, face, hearting, throughs, copes.
    pub fn kinds_t(&self) -> [f64; 5] {
        let density_t = f64::from(self.stone.density) / 1000.0;
        let solid = density_t * (1.0 - self.share(0));
        let throughs = self.throughs_t();
        let rest = self.body() * solid - throughs;
        [
            self.footing_volume() * solid,
            rest * (1.0 - self.share(1)),
            rest * self.share(1),
            throughs,
            self.cope_volume() * density_t * COPE_FILL,
        ]
    }

    /// Tonnes to deliver at likely figures: built over what is not wasted, less what is there.
    pub fn to_deliver_t(&self) -> f64 {
        let used = 1.0 - self.share(2);
        let kinds = self.kinds_t();
        match self.stone.on_site {
            Ok(heap) => (kinds.iter().sum::<f64>() / used - metres(heap)).max(0.0),
            Err(there) => kinds
                .iter()
                .zip(there)
                .map(|(built, there)| (built / used - metres(there)).max(0.0))
                .sum(),
        }
    }

    /// Where frames stand: both ends of each stretch, and between them equal bays. A ring ends
    /// where it began, and one frame stands there.
    pub fn stations(&self) -> Vec<f64> {
        let mut stations = vec![0.0];
        let mut from = 0.0;
        for stretch in &self.line.stretches {
            let spacing = self.frames.spacing[usize::from(stretch.bend.is_some())];
            let bays = stretch.length.div_ceil(spacing);
            let bay = metres(stretch.length) / f64::from(bays);
            stations.extend((1..=bays).map(|at| from + bay * f64::from(at)));
            from += metres(stretch.length);
        }
        if self.line.ring {
            stations.pop();
        }
        stations
    }

    /// The longest bar wanted: along a leaning face, in the ground, above the board.
    pub fn bar(&self) -> f64 {
        let along = |station: &f64| {
            let standing = self.standing(*station);
            let bars = [0, 1].map(|side| {
                let rise = standing.top - standing.faces[side];
                self.batter[side].map_or(rise, |n| (rise / n).hypot(rise))
            });
            bars[0].max(bars[1])
        };
        let depth = self.footing.map_or(0.0, |[depth, _]| metres(depth));
        let embedment = self.frames.embedment.map_or(EMBEDMENT + depth, metres);
        let longest = self.stations().iter().map(along).fold(0.0, f64::max);
        longest + embedment + metres(self.frames.projection)
    }

    /// The shortest in stock that is enough.
    pub fn stock_bar(&self) -> Option<f64> {
        let needed = self.bar();
        let stock = self.frames.stock.iter().map(|&mm| metres(mm));
        stock
            .filter(|length| needed <= *length)
            .min_by(f64::total_cmp)
    }

    pub fn copes(&self) -> u32 {
        self.cope
            .map_or(0, |_| self.line.length().div_ceil(self.cope_thickness))
    }
}
