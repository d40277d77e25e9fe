//! `heaps.toml` as the sums want it.

use super::rows;
use craft::course::StoneKind;
use craft::quantity::{cubic_metres, tonnes};
use craft::tables::{ClearTable, HeapTable, Lie, Lying, RowTable, TipTable};

/// How stone lies beside a wall.
pub(super) fn heaps(file: rows::Heaps) -> HeapTable {
    HeapTable {
        stone: [
            (StoneKind::Footing, heaped(file.footing)),
            (StoneKind::Face, heaped(file.face)),
            (StoneKind::Hearting, heaped(file.hearting)),
            (StoneKind::Throughs, laid(file.throughs)),
            (StoneKind::Copes, laid(file.copes)),
        ],
        drainage: Lie::Heaped {
            repose_degrees: file.drainage.repose_degrees,
            height: file.drainage.height.0,
        },
        clear: clear(file.strip, file.trench, file.ways),
        rows: in_rows(file.rows),
        tip: TipTable {
            load: tonnes(file.tip.load_t),
            height: file.tip.height.0,
            source: file.tip.source,
        },
    }
}

fn heaped(row: rows::Heaped) -> Lying {
    Lying {
        loose_voids: row.loose_voids,
        lie: Lie::Heaped {
            repose_degrees: row.repose_degrees,
            height: row.height.0,
        },
        source: row.source,
    }
}

fn laid(row: rows::Laid) -> Lying {
    Lying {
        loose_voids: row.loose_voids,
        lie: Lie::Laid {
            width: row.width.0,
            height: row.height.0,
        },
        source: row.source,
    }
}

fn clear(strip: rows::Strip, trench: rows::Trench, ways: rows::Ways) -> ClearTable {
    ClearTable {
        strip: strip.working.0,
        strip_source: strip.source,
        trench: trench.clear.0,
        trench_depths: trench.depths,
        trench_source: trench.source,
        way: ways.width.0,
        way_every: ways.every.0,
        way_source: ways.source,
    }
}

fn in_rows(row: rows::HeapRows) -> RowTable {
    RowTable {
        foot_room: row.foot_room.0,
        between: row.between.0,
        reach: row.reach.0,
        shortest: row.shortest.0,
        beyond_end: row.beyond_end.0,
        hearting_every: row.hearting_every.0,
        low: row.low.0,
        least: cubic_metres(row.least_m3),
        source: row.source,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shelf::built_in;
    use craft::quantity::{Read, in_tonnes};

    fn read(text: &str) -> Result<rows::Heaps, String> {
        toml_edit::de::from_str(text).map_err(|error| error.to_string())
    }

    #[test]
    fn the_built_in_table_is_read_as_it_is_written() {
        let table = crate::Library::built_in()
            .expect("sound")
            .tables
            .heaps
            .clone();
        let face = table.stone(StoneKind::Face);
        assert!((face.loose_voids - 0.42).abs() < 1e-12);
        assert!(matches!(
            face.lie,
            Lie::Heaped { repose_degrees, height }
                if (repose_degrees - 40.0).abs() < 1e-12 && (height.si() - 1.0).abs() < 1e-12
        ));
        assert!(matches!(
            table.stone(StoneKind::Copes).lie,
            Lie::Laid { .. }
        ));
        assert!((table.clear.trench.si() - 0.61).abs() < 1e-12);
        assert!((table.rows.least.si() - 0.1).abs() < 1e-12);
        assert!((in_tonnes(table.tip.load) - 10.0).abs() < 1e-12);
    }

    #[test]
    fn what_can_not_be_is_refused() {
        let text = built_in("tables/heaps.toml").expect("it is built in");
        assert!(read(text).is_ok());
        for (from, to, told) in [
            ("repose_degrees = 38", "repose_degrees = 90", "10 to 60"),
            ("loose_voids = 0.45", "loose_voids = 1", "a share"),
            ("foot_room = \"0.6 m\"", "foot_room = \"0 m\"", "nothing"),
            ("least_m3 = 0.1", "least_m3 = -1", "nothing"),
            ("[tip]", "[tipp]", "tipp"),
            ("depths = 1", "depths = 1\ndeep = 2", "deep"),
        ] {
            let broken = text.replacen(from, to, 1);
            let error = read(&broken).err().expect("refused");
            assert!(error.contains(told), "{to}: {error}");
        }
    }
}
