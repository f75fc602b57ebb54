//! Lag screws, wood screws, nails, bolts, washers by size (NDS 2018
//! Appendix L, read second-hand).

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// Where the sizes of lag screws, wood screws and nails come from.
pub const SIZES_BASIS: Provenance = Provenance::quoted("NDS 2018 Appendix L");

/// A lag screw (hex head, coarse thread, tapered tip).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lag {
    /// As it is sold: `1/2 in`.
    pub name: &'static str,
    /// D, of the unthreaded shank.
    pub diameter: Distance,
    /// D_r, at the root of the thread.
    pub root: Distance,
    /// E, the tapered tip.
    pub tip: Distance,
}

impl Lag {
    /// T, the thread of a lag of this length, tip included: the least of 6 in
    /// and half the length + 1/2 in, and no more than the length.
    #[must_use]
    pub fn thread(length: Distance) -> Worked<Distance> {
        let inputs = [("L", length.into())];
        let thread = inches(6.0).min(length / 2.0 + inches(0.5)).min(length);
        Worked::new(
            "T",
            "min(6 in, L/2 + 0.5 in, L)",
            &inputs,
            thread,
            SIZES_BASIS,
        )
    }

    /// p_t, the thread held in the main member behind a side member: the tip
    /// counts for nothing, and a lag that comes out at the back fills the member.
    #[must_use]
    pub fn thread_in_main(
        self,
        length: Distance,
        side: Distance,
        main: Distance,
    ) -> Worked<Distance> {
        let thread = Lag::thread(length);
        let held = (length - self.tip).min(side + main) - (length - thread.value).max(side);
        let inputs = [
            ("L", length.into()),
            ("E", self.tip.into()),
            ("t_s", side.into()),
            ("t_m", main.into()),
            ("T", thread.value.into()),
        ];
        let held = held.max(Distance::default());
        let formula = "min(L - E, t_s + t_m) - max(L - T, t_s)";
        Worked::new("p_t", formula, &inputs, held, SIZES_BASIS).after(thread)
    }
}

const fn lag(name: &'static str, diameter: f64, root: f64, tip: f64) -> Lag {
    Lag {
        name,
        diameter: inches(diameter),
        root: inches(root),
        tip: inches(tip),
    }
}

/// Lag screws ([`SIZES_BASIS`]).
pub const LAGS: &[Lag] = &[
    lag("1/4 in", 0.25, 0.173, 5.0 / 32.0),
    lag("5/16 in", 0.3125, 0.227, 3.0 / 16.0),
    lag("3/8 in", 0.375, 0.265, 7.0 / 32.0),
    lag("7/16 in", 0.4375, 0.328, 9.0 / 32.0),
    lag("1/2 in", 0.5, 0.371, 5.0 / 16.0),
    lag("5/8 in", 0.625, 0.471, 13.0 / 32.0),
    lag("3/4 in", 0.75, 0.579, 0.5),
];

/// A wood screw, cut or rolled thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WoodScrew {
    /// The number it is sold by: 10 for No. 10.
    pub number: u8,
    /// D, nominal.
    pub diameter: Distance,
    /// D_r, at the root of the thread.
    pub root: Distance,
    /// D_H, of the head.
    pub head: Distance,
}

impl WoodScrew {
    /// Thread of a screw of this length: about two thirds.
    #[must_use]
    pub fn thread(length: Distance) -> Worked<Distance> {
        let inputs = [("L", length.into())];
        Worked::new("T", "2·L/3", &inputs, length * 2.0 / 3.0, SIZES_BASIS)
    }

    /// p_t, the thread held in the main member behind a side member, tip included.
    #[must_use]
    pub fn thread_in_main(length: Distance, side: Distance, main: Distance) -> Worked<Distance> {
        let thread = WoodScrew::thread(length);
        let held = length.min(side + main) - (length - thread.value).max(side);
        let inputs = [
            ("L", length.into()),
            ("t_s", side.into()),
            ("t_m", main.into()),
            ("T", thread.value.into()),
        ];
        let held = held.max(Distance::default());
        let formula = "min(L, t_s + t_m) - max(L - T, t_s)";
        Worked::new("p_t", formula, &inputs, held, SIZES_BASIS).after(thread)
    }
}

const fn screw(number: u8, diameter: f64, root: f64, head: f64) -> WoodScrew {
    WoodScrew {
        number,
        diameter: inches(diameter),
        root: inches(root),
        head: inches(head),
    }
}

/// Wood screws ([`SIZES_BASIS`]).
pub const WOOD_SCREWS: &[WoodScrew] = &[
    screw(6, 0.138, 0.113, 0.262),
    screw(7, 0.151, 0.122, 0.287),
    screw(8, 0.164, 0.131, 0.312),
    screw(9, 0.177, 0.142, 0.337),
    screw(10, 0.190, 0.152, 0.363),
    screw(12, 0.216, 0.171, 0.414),
    screw(14, 0.242, 0.196, 0.480),
];

/// Allowable tension of a bolt of A307 steel: 45 ksi on the nominal area, over 2.
#[must_use]
pub fn bolt_tension(diameter: Distance) -> Worked<Force> {
    let strength: Pressure = psi(45_000.0);
    let inputs = [("F_nt", strength.into()), ("D", diameter.into())];
    let area = diameter * diameter * (std::f64::consts::PI / 4.0);
    let basis = Provenance::published(
        "AISC 360-10 Table J3.2: A307 bolts, F_nt 45 ksi (Ω 2.0 from memory)",
    );
    Worked::new(
        "T_a",
        "F_nt·π·D²/4/2",
        &inputs,
        strength * area / 2.0,
        basis,
    )
}

/// D_h, the hole that a bolt needs: 1/16 in wider, the upper end of what the
/// standard allows (1/32 to 1/16 in).
#[must_use]
pub fn bolt_hole(diameter: Distance) -> Worked<Distance> {
    let inputs = [("D", diameter.into())];
    let hole = diameter + inches(1.0 / 16.0);
    let basis = Provenance::quoted("NDS 2018 §12.1.3.2");
    Worked::new("D_h", "D + 1/16 in", &inputs, hole, basis)
}
