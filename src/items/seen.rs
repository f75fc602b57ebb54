//! The rows of what is seen at a guard, and not measured.

use crate::items::AskedWhen;
use crate::items::Change;
use crate::items::FastenedToWord;
use crate::items::Group;
use crate::items::GuardWord;
use crate::items::Hazard;
use crate::items::Holds;
use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::MovesWhenPushedWord;
use crate::items::NotchedPostWord;
use crate::items::PaintWord;
use crate::items::Part;
use crate::items::PostFasteningWord;
use crate::items::Role;
use crate::items::WindowStopWord;
use crate::items::row::row;

pub(super) const GUARD: ItemInfo = ItemInfo {
    holds: Holds::ForThisGuardAlone,
    role: Role::Single,
    synonyms: &["railing", "rail", "balustrade", "barrier"],
    hazards: &[Hazard::FallOver],
    question: "Is there a guard at this edge?",
    ..row(
        Item::Guard,
        "guard",
        Kind::Words(GuardWord::WORDS),
        Group::Seen,
        "Whether there is a guard at this edge at all.",
        &[
            "Only needed where there is none, or where you could not look.",
            "An insect screen is no guard (IRC 2018 R312.1.1).",
        ],
        &["none", "present", "not reached"],
    )
};

pub(super) const INFILL: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(31),
    change: Change::StartsAGuard,
    role: Role::Single,
    synonyms: &["filling", "fill", "infill type", "type of infill"],
    hazards: &[Hazard::FallThrough, Hazard::Climb],
    question: "What fills the guard between floor and top rail?",
    ..row(
        Item::Infill,
        "infill",
        Kind::Words(InfillWord::WORDS),
        Group::Seen,
        "What fills the guard between floor and top rail.",
        &[
            "Choose the word that fits most of it. Level cables are cables, upright ones upright cables.",
            "Cables and nets give way: try a ball, pushed by hand.",
        ],
        &["balusters", "horizontal bars", "glass"],
    )
};

pub(super) const INFILL_LOOSE: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    holds: Holds::ForThisGuardAlone,
    synonyms: &["loose infill", "loose balusters", "loose spindles"],
    hazards: &[Hazard::FallThrough, Hazard::GiveWay],
    question: "Is any baluster or panel loose or missing?",
    ..row(
        Item::InfillLoose,
        "infill loose",
        Kind::Words(InfillLooseWord::WORDS),
        Group::Seen,
        "Whether balusters or panels are loose or missing.",
        &["Take hold of each and twist it gently. Do not pull hard."],
        &["no", "one", "missing"],
    )
};

pub(super) const POST_FASTENING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(0),
    synonyms: &[
        "fastening",
        "fixing",
        "post fixing",
        "posts held by",
        "held by",
    ],
    hazards: &[Hazard::GiveWay],
    question: "What holds the posts?",
    ..row(
        Item::PostFastening,
        "post fastening",
        Kind::Words(PostFasteningWord::WORDS),
        Group::Seen,
        "What holds the posts to the building.",
        &[
            "Look at the foot of a post, inside and outside; take nothing apart.",
            "Bolt heads with a nut behind: through bolts. Hexagon heads without a nut: lag screws.",
            "Cannot be seen: hidden. Could not look: not reached. A bolt or a screw that should be there and is not: missing.",
        ],
        &["through bolts", "nails", "hidden"],
    )
};

pub(super) const NOTCHED_POST: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(7),
    synonyms: &["notched", "notched posts"],
    hazards: &[Hazard::GiveWay],
    question: "Is the post notched where it is fixed?",
    topic: Some(Item::PostFastening),
    ..row(
        Item::NotchedPost,
        "notched post",
        Kind::Words(NotchedPostWord::WORDS),
        Group::Seen,
        "Whether a post is cut away where it is fixed.",
        &["Look whether the post gets thinner at the deck's edge."],
        &["no", "yes"],
    )
};

pub(super) const FASTENED_TO: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(1),
    change: Change::StartsAGuard,
    synonyms: &["fixed to", "fastened into"],
    hazards: &[Hazard::GiveWay],
    question: "What are the posts fastened to?",
    topic: Some(Item::PostFastening),
    ..row(
        Item::FastenedTo,
        "fastened to",
        Kind::Words(FastenedToWord::WORDS),
        Group::Seen,
        "What the posts or rail ends are fastened to.",
        &["Look from below or from the side. Cannot be seen: hidden."],
        &["joist", "rim board", "hidden"],
    )
};

pub(super) const MOVES_WHEN_PUSHED: ItemInfo = ItemInfo {
    load_path: Some(3),
    part: Part::OfTheGuard,
    holds: Holds::ForThisGuardAlone,
    synonyms: &["moves", "wobbles", "wobbly"],
    hazards: &[Hazard::GiveWay],
    question: "Does it move when you push it gently?",
    topic: Some(Item::PostFastening),
    ..row(
        Item::MovesWhenPushed,
        "moves when pushed",
        Kind::Words(MovesWhenPushedWord::WORDS),
        Group::Seen,
        "Whether the guard moves when pushed gently with one hand.",
        &[
            "Stand firmly on the safe side, well back. Never lean on it.",
            "Push once, gently, with one hand at the top, near a post and between two posts.",
            "Stop at the first movement or noise.",
        ],
        &["no", "a little", "a lot"],
    )
};

pub(super) const PAINT: ItemInfo = ItemInfo {
    holds: Holds::ForThisGuardAlone,
    synonyms: &["paint condition"],
    question: "Is the paint sound or flaking?",
    ..row(
        Item::Paint,
        "paint",
        Kind::Words(PaintWord::WORDS),
        Group::Seen,
        "Whether the paint is sound or flaking.",
        &["Look at rails at a child's mouth height. Do not scrape it."],
        &["sound", "flaking"],
    )
};

pub(super) const WINDOW_STOP: ItemInfo = ItemInfo {
    synonyms: &[
        "window restrictor",
        "window guard",
        "opening limiter",
        "restrictor",
    ],
    hazards: &[Hazard::FallOver],
    question: "Does a stop keep the window from opening wide, and does it hold?",
    ..row(
        Item::WindowStop,
        "window stop",
        Kind::Words(WindowStopWord::WORDS),
        Group::Seen,
        "Whether a stop, a limiter or a bar keeps an open window from opening far enough to fall out.",
        &[
            "Open the window until it stops, standing well inside.",
            "holds: it cannot be undone without a tool or two hands at once. comes undone: a child could undo it, or it slips. Never push a pane to try it.",
        ],
        &["holds", "comes undone", "none"],
    )
};

pub(super) const PHOTO: ItemInfo = ItemInfo {
    synonyms: &["photograph", "picture", "photos"],
    asked: AskedWhen::Never,
    question: "Is there a photograph of it?",
    ..row(
        Item::Photo,
        "photo",
        Kind::Text,
        Group::Seen,
        "A photograph of the guard: the name of its file, beside the survey.",
        &[
            "Write the file's name, with its folder where it has one. The picture stays where it is and is not looked at.",
            "A folding rule held beside what the picture shows tells its size later.",
        ],
        &["photos/landing.jpg", "IMG_2041.jpg"],
    )
};
