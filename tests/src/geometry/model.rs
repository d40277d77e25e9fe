//! A wall reckoned a second time: plain numbers, sums of slices, nothing shared with our sums.

use super::drawn::Wall;

/// Slices a section is cut into.
const SLICES: u32 = 2000;

/// Share of the cope that is solid; what the course file's makers promise as default.
const COPE_FILL: f64 = 0.7;

pub fn metres(mm: u32) -> f64 {
    f64::from(mm) / 1000.0
}

impl Wall {
    pub fn length(&self) -> f64 {
        self.line.iter().map(|&mm| metres(mm)).sum()
    }

    /// From the middle of the top to a face, at a height above the ground.
    pub fn half(&self, side: usize, above_ground: f64) -> f64 {
        let below_top = metres(self.height) - above_ground;
        metres(self.top) / 2.0 + self.batter[side].map_or(0.0, |n| below_top / n)
    }

    pub fn width(&self, above_ground: f64) -> f64 {
        self.half(0, above_ground) + self.half(1, above_ground)
    }

    /// The sum over thin level slices of the section: `f(height of the slice) · thickness`.
    fn slices(&self, f: impl Fn(f64) -> f64) -> f64 {
        let thick = metres(self.height) / f64::from(SLICES);
        (0..SLICES)
            .map(|slice| f((f64::from(slice) + 0.5) * thick) * thick)
            .sum()
    }

    pub fn area(&self) -> f64 {
        self.slices(|at| self.width(at))
    }

    pub fn body(&self) -> f64 {
        self.area() * self.length()
    }

    pub fn footing_volume(&self) -> f64 {
        self.footing.map_or(0.0, |[depth, outset]| {
            (self.width(0.0) + 2.0 * metres(outset)) * metres(depth) * self.length()
        })
    }

    pub fn cope_volume(&self) -> f64 {
        metres(self.top) * metres(self.cope.unwrap_or(0)) * self.length()
    }

    /// A raked end steps back one along for one up: at each height so much length is missing.
    pub fn raked_away(&self) -> f64 {
        let ends = self.raked.iter().filter(|raked| **raked).count() as f64;
        ends * self.slices(|at| self.width(at) * at)
    }

    fn share(&self, which: usize) -> f64 {
        f64::from(self.stone.shares[which]) / 100.0
    }

    /// Throughs in a row: the spacing that fits best, one at least.
    pub fn throughs_in_a_row(&self) -> f64 {
        (self.length() / metres(self.through_spacing))
            .round()
            .max(1.0)
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

    /// Where frames stand: both ends of each stretch, and between them equal bays.
    pub fn stations(&self) -> Vec<f64> {
        let mut stations = vec![0.0];
        let mut from = 0.0;
        for &stretch in &self.line {
            let bays = stretch.div_ceil(self.frames.spacing);
            let bay = metres(stretch) / f64::from(bays);
            stations.extend((1..=bays).map(|at| from + bay * f64::from(at)));
            from += metres(stretch);
        }
        stations
    }

    /// The longest bar wanted: along the leaning face, in the ground, above the board.
    pub fn bar(&self) -> f64 {
        let height = metres(self.height);
        let along = |n: Option<f64>| n.map_or(height, |n| (height / n).hypot(height));
        self.batter.map(along).into_iter().fold(0.0, f64::max)
            + metres(self.frames.embedment)
            + metres(self.frames.projection)
    }

    /// The shortest in stock that is enough.
    pub fn stock_bar(&self) -> Option<f64> {
        let stock = self.frames.stock.iter().map(|&mm| metres(mm));
        stock
            .filter(|length| self.bar() <= *length)
            .min_by(f64::total_cmp)
    }

    pub fn copes(&self) -> u32 {
        let length: u32 = self.line.iter().sum();
        self.cope
            .map_or(0, |_| length.div_ceil(self.cope_thickness))
    }
}
