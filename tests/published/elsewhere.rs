//! Limits of texts outside North America as they state them, each row with title,
//! clause and edition. Whether a room is a bedroom no survey says: the window rule of
//! Australia is a person's to decide. The tension of wires no item holds. The verdicts we worked out by
//! hand from the words of the clause, apart from the code.

use super::judge;

/// source | ruleset | rule | readings | verdict of the reading alone.
const ROWS: &str = "
Approved Document K, protection from falling, collision and impact: 1.41 (2013, with its amendments of 2013) | uk-approved-document-k | no-guard-at-stair | place=stair; drop=600 mm; guard=none | does not apply
Approved Document K, protection from falling, collision and impact: 1.41 (2013, with its amendments of 2013) | uk-approved-document-k | no-guard-at-stair | place=stair; drop=601 mm; guard=none | falls short
Approved Document K, protection from falling, collision and impact: 3.2a, diagram 3.1 (2013, with its amendments of 2013) | uk-approved-document-k | rail-too-low | place=landing; drop=2.4 m; height=900 mm | meets
Approved Document K, protection from falling, collision and impact: 3.2a, diagram 3.1 (2013, with its amendments of 2013) | uk-approved-document-k | rail-too-low | place=landing; drop=2.4 m; height=899 mm | falls short
Approved Document K, protection from falling, collision and impact: Diagram 3.1 (2013, with its amendments of 2013) | uk-approved-document-k | outside-rail-too-low | place=balcony; drop=2.4 m; height=1050 mm | falls short
Approved Document K, protection from falling, collision and impact: 3.3a (2013, with its amendments of 2013) | uk-approved-document-k | gap-too-wide | place=landing; drop=2.4 m; opening=99 mm | meets
Approved Document K, protection from falling, collision and impact: 3.3a (2013, with its amendments of 2013) | uk-approved-document-k | gap-too-wide | place=landing; drop=2.4 m; opening=100 mm | falls short
Approved Document K, protection from falling, collision and impact: 3.3a (2013, with its amendments of 2013) | uk-approved-document-k | gap-too-wide | place=landing; drop=2.4 m; infill=horizontal bars; opening=80 mm | meets
Approved Document K, protection from falling, collision and impact: 3.3b (2013, with its amendments of 2013) | uk-approved-document-k | climbable-infill | place=landing; drop=2.4 m; infill=horizontal bars; opening=80 mm | not settled
A summary of 1.34 to 1.36 and 2.12 of Approved Document K by the Health and Safety: 1.34 to 1.36, 2.12 (2013) | uk-approved-document-k | handrail-height | place=ramp; handrail=separate; handrail height=1000 mm | meets
A summary of 1.34 to 1.36 and 2.12 of Approved Document K by the Health and Safety: 1.34 to 1.36, 2.12 (2013) | uk-approved-document-k | handrail-height | place=ramp; handrail=separate; handrail height=1001 mm | falls short
Approved Document K, protection from falling, collision and impact: Diagram 3.1 (2013, with its amendments of 2013) | uk-approved-document-k | outside-rail-too-low | place=deck; drop=2.4 m; height=1000 mm | falls short
Approved Document K, protection from falling, collision and impact: 3.3a (2013, with its amendments of 2013) | uk-approved-document-k | gap-too-wide | place=deck; drop=2.4 m; opening=105 mm | falls short
Approved Document K, protection from falling, collision and impact: 3.2a, diagram 3.1 (2013, with its amendments of 2013) | uk-approved-document-k | rail-too-low | place=stair; drop=2600 mm; height=880 mm | falls short
A county authority's page that quotes 1.39 of Approved Document K: 1.39a (2013) | uk-approved-document-k | stair-gap-too-wide | place=stair; drop=2600 mm; opening=95 mm | meets
A county authority's page that quotes 1.39 of Approved Document K: 1.39a (2013) | uk-approved-document-k | step-triangle-too-wide | place=stair; drop=2600 mm; stair triangle=rise 180 going 280 lift 25 mm | not settled
Building Regulations (Northern Ireland) 2012, part H, regulation 54: 54(3)(c) (SR 2012/192) | northern-ireland-2012 | no-guard-at-stair | place=stair; drop=600 mm; guard=none | falls short
Building Regulations (Northern Ireland) 2012, part H, regulation 54: 54(3)(c) (SR 2012/192) | northern-ireland-2012 | no-guard-at-stair | place=stair; drop=599 mm; guard=none | does not apply
Technical Guidance Document K, 2.1 to 2.5: 2.2 (2014) | ireland-tgd-k-2014 | no-guard | place=floor edge; drop=600 mm; guard=none | does not apply
Technical Standards for compliance with the Building Standards (Scotland) Regulations: S4.1 (amended December 1999) | scotland-1999 | no-guard | place=floor edge; drop=600 mm; guard=none | falls short
A summary of 1.34 to 1.36 and 2.12 of Approved Document K by the Health and Safety: 1.34 to 1.36 (2013) | uk-approved-document-k | handrail-on-one-side | place=stair; flight width=1000 mm; handrail=separate; handrail sides=one side | falls short
A minister's written answer 671 of 26 July 2022 on handrails: Handrails (2022) | ireland-tgd-k-2014 | handrail-on-one-side | place=stair; flight width=1000 mm; handrail=separate; handrail sides=one side | does not apply
A minister's written answer 671 of 26 July 2022 on handrails: Handrails (2022) | ireland-tgd-k-2014 | handrail-missing | place=stair; flight width=1000 mm; handrail=separate; handrail sides=one side | meets
Technical Guidance Document K, 2.1 to 2.5: 2.4 (2014) | ireland-tgd-k-2014 | no-guard-at-window | place=window; sill above ground=1400 mm; sill top height=790 mm; guard=none | does not apply
Technical Guidance Document K, 2.1 to 2.5: 2.4 (2014) | ireland-tgd-k-2014 | no-guard-at-window | place=window; sill above ground=1401 mm; sill top height=799 mm; guard=none | falls short
Technical Guidance Document K, 2.1 to 2.5: 2.4 (2014) | ireland-tgd-k-2014 | no-guard-at-window | place=window; sill above ground=1500 mm; sill top height=800 mm; guard=none | does not apply
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.3(1) (2025, numbered as 2022) | australia-ncc-2022 | no-guard | place=deck; drop=1000 mm; guard=none | falls short
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.3(1) (2025, numbered as 2022) | australia-ncc-2022 | no-guard | place=deck; drop=999 mm; guard=none | does not apply
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(2)(a) (2025, numbered as 2022) | australia-ncc-2022 | stair-rail-too-low | place=stair; drop=2600 mm; height=865 mm | meets
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(2)(b)(ii) (2025, numbered as 2022) | australia-ncc-2022 | inner-landing-rail-too-low | place=landing; drop=2600 mm; inner edge length=500 mm; height=865 mm | meets
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(2)(b)(i) (2025, numbered as 2022) | australia-ncc-2022 | rail-too-low | place=landing; drop=2600 mm; inner edge length=500 mm; height=865 mm | does not apply
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(2)(b)(i) (2025, numbered as 2022) | australia-ncc-2022 | rail-too-low | place=landing; drop=2600 mm; inner edge length=501 mm; height=865 mm | falls short
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(4) (2025, numbered as 2022) | australia-ncc-2022 | gap-too-wide | place=deck; drop=2400 mm; opening=124 mm | meets
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.4(4) (2025, numbered as 2022) | australia-ncc-2022 | gap-too-wide | place=deck; drop=2400 mm; opening=125 mm | falls short
The code board's own news of barriers fixed to the face of an edge: 11.3.4, D3D19 (2022) | australia-ncc-2022 | edge-gap-too-wide | place=deck; drop=2400 mm; edge gap=40 mm | meets
The code board's own news of barriers fixed to the face of an edge: 11.3.4, D3D19 (2022) | australia-ncc-2022 | edge-gap-too-wide | place=deck; drop=2400 mm; edge gap=41 mm | falls short
Guidance of Queensland's building regulator and of a council in Victoria, which give the: 11.3.4(8)(a), D3D20(1), numbers from memory (as published online) | australia-ncc-2022 | foothold-in-reach | place=deck; drop=4000 mm; foothold=450 mm high | does not apply
Guidance of Queensland's building regulator and of a council in Victoria, which give the: 11.3.4(8)(a), D3D20(1), numbers from memory (as published online) | australia-ncc-2022 | foothold-in-reach | place=deck; drop=4001 mm; foothold=450 mm high | falls short
Guidance of Queensland's building regulator and of a council in Victoria, which give the: 11.3.4(8)(a), D3D20(1), numbers from memory (as published online) | australia-ncc-2022 | foothold-in-reach | place=deck; drop=5000 mm; foothold=800 mm high | meets
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.7 (2025, numbered as 2022) | australia-ncc-2022 | window-can-be-fallen-from | place=window; drop=2000 mm; sill height=1699 mm; opening=125 mm | not settled
ABCB Housing Provisions 11.2 and 11.3, clauses as published: 11.3.7 (2025, numbered as 2022) | australia-ncc-2022 | window-can-be-fallen-from | place=window; drop=2000 mm; sill height=1700 mm; opening=125 mm | does not apply
A restatement of table 1 of F4/AS1: F4/AS1 1.1, table 1 (2017) | new-zealand-f4 | rail-too-low | place=deck; drop=2400 mm; height=1000 mm | meets
F4/AS1, 1.1 and 1.2 with comments: 1.2(b) (third edition, amendment 2) | new-zealand-f4 | gap-too-wide | place=deck; drop=2400 mm; opening=105 mm | falls short
F4/AS1, 1.1 and 1.2 with comments: 1.2(c) (third edition, amendment 2) | new-zealand-f4 | step-triangle-too-wide | place=stair; drop=2600 mm; stair triangle=rise 180 going 280 lift 25 mm | meets
F4/AS1, 1.1 and 1.2 with comments: 1.2(c) (third edition, amendment 2) | new-zealand-f4 | step-triangle-too-wide | place=stair; drop=2600 mm; stair triangle=rise 180 going 280 lift 50 mm | falls short
The regulator's page on F4.3.1, and its newsletter on determination 2008/81: F4.3.1 (2008 and 2017) | new-zealand-f4 | no-guard | place=deck; drop=800 mm; drop=1100 mm; guard=none | falls short
LBauO Rheinland-Pfalz, section 38: Section 38(1) (as read) | germany-building-codes | no-guard | place=balcony; drop=1000 mm; guard=none | does not apply
LBauO Rheinland-Pfalz, section 38: Section 38(3), in Thuringia 38(4) (as read) | germany-building-codes | rail-too-low | place=balcony; drop=12000 mm; height=900 mm | meets
LBauO Rheinland-Pfalz, section 38: Section 38(3) (as read) | germany-building-codes | high-rail-too-low | place=balcony; drop=12001 mm; height=1000 mm | falls short
Sichere Kita and guides of the Unfallkassen for child-care buildings: Guards (as published online) | germany-child-care | high-rail-too-low | place=balcony; drop=12000 mm; height=1000 mm | falls short
DIN 18065: Openings (as quoted) | germany-stairs-din-18065 | gap-too-wide | place=stair; use=dwelling; dwellings in building=3; opening=120 mm | meets
DIN 18065: Openings (as quoted) | germany-stairs-din-18065 | gap-too-wide | place=stair; use=dwelling; dwellings in building=3; opening=121 mm | falls short
DIN 18065: Openings (as quoted) | germany-stairs-din-18065 | gap-too-wide | place=stair; use=dwelling; dwellings in building=2; opening=150 mm | does not apply
Landesbauordnung Baden-Württemberg, section 16(3) to (8): Section 16(8) (as amended on 18 March 2025) | germany-baden-wuerttemberg | low-level-gap-too-wide | place=landing; use=dwelling; shared=yes; dwellings in building=6; infill=horizontal bars; opening=20 mm at 300 mm | meets
Landesbauordnung Baden-Württemberg, section 16(3) to (8): Section 16(8) (as amended on 18 March 2025) | germany-baden-wuerttemberg | low-level-gap-too-wide | place=landing; use=dwelling; shared=yes; dwellings in building=6; infill=horizontal bars; opening=21 mm at 300 mm | falls short
Landesbauordnung Baden-Württemberg, section 16(3) to (8): Section 16(8) (as amended on 18 March 2025) | germany-baden-wuerttemberg | low-level-gap-too-wide | place=landing; use=dwelling; shared=no; dwellings in building=6; infill=horizontal bars; opening=21 mm at 300 mm | does not apply
DGUV Information 202-005, 4.1: 4.1 (as published by the accident insurers) | germany-child-minding | gap-too-wide-for-small-child | place=stair; children=2 years; opening=89 mm | meets
DGUV Information 202-005, 4.1: 4.1 (as published by the accident insurers) | germany-child-minding | gap-too-wide-for-small-child | place=stair; children=2 years; opening=90 mm | falls short
DGUV Information 202-005, 4.1: 4.1 (as published by the accident insurers) | germany-child-minding | gap-too-wide | place=stair; children=4 years; opening=110 mm | meets
DGUV Information 202-005, 4.1: 4.1 (as published by the accident insurers) | germany-child-minding | gap-too-wide | place=stair; children=4 years; opening=111 mm | falls short
Code de la construction et de l'habitation, article R134-59: CCH R134-59, NF P01-012 (2021) | france-1988 | rail-too-low | place=balcony; use=dwelling; drop=2600 mm; guard thickness=300 mm; height=0.95 m | falls short
Code de la construction et de l'habitation, article R134-59: CCH R134-59, NF P01-012 (2021) | france-1988 | rail-too-low | place=balcony; drop=2600 mm; guard thickness=500 mm; height=0.80 m | falls short
Code de la construction et de l'habitation, article R134-59: CCH R134-59, NF P01-012 (2021) | france-1988 | rail-too-low | place=balcony; drop=2600 mm; guard thickness=501 mm; height=0.80 m | meets
NF P01-012: Level bars (July 1988) | france-1988 | upper-level-gap-too-wide | place=balcony; drop=2600 mm; infill=horizontal bars; opening=180 mm at 600 mm | meets
The committee's explanation of NF P01-012 of 2024, cited by a third party: Openings (2024) | france-2024 | gap-too-wide | place=balcony; drop=2600 mm; infill=horizontal bars; opening=180 mm at 600 mm; bottom gap=none | falls short
The committee's explanation of NF P01-012 of 2024, cited by a third party: Openings (2024) | france-2024 | upper-gap-too-wide | place=balcony; drop=2600 mm; opening=180 mm at 900 mm | meets
NF P01-012: Uprights (July 1988) | france-1988 | gap-too-wide | place=balcony; drop=2600 mm; infill=balusters; opening=110 mm | meets
NF P01-012: Uprights (July 1988) | france-1988 | gap-too-wide | place=balcony; drop=2600 mm; infill=balusters; opening=111 mm | falls short
Advice of the accident-prevention centre on railings, with figures of SIA 358: Openings (as published online) | switzerland-sia-358 | gap-too-wide | place=balcony; drop=2600 mm; opening=120 mm at 300 mm | falls short
Advice of the accident-prevention centre on railings, with figures of SIA 358: Openings (as published online) | switzerland-sia-358 | gap-too-wide | place=balcony; drop=2600 mm; opening=150 mm at 800 mm to 1000 mm; opening=100 mm at 300 mm | meets
OIB-Richtlinie 4, 4.1 and 4.2: 4.2.2 (2019) | austria-oib-4 | gap-too-wide | place=balcony; drop=2600 mm; opening=120 mm | meets
BBR 8:232 and 8:2321: 8:2321 (BBR 17 and 19) | sweden-bbr | gap-above-front-can-hold-a-head | place=balcony; gap above solid part=150 mm | falls short
BBR 8:232 and 8:2321: 8:2321 (BBR 17 and 19) | sweden-bbr | gap-above-front-can-hold-a-head | place=balcony; gap above solid part=240 mm | meets
BBR 8:232 and 8:2321: 8:2321 (BBR 17 and 19) | sweden-bbr | gap-above-front-can-hold-a-head | place=balcony; gap above solid part=105 mm | meets
BBR 8:232 and 8:2321: 8:2321 (BBR 17 and 19) | sweden-bbr | bottom-gap-too-high | place=balcony; bottom gap=50 mm | meets
BBR 8:232 and 8:2321: 8:2321 (BBR 17 and 19) | sweden-bbr | bottom-gap-too-high | place=balcony; bottom gap=51 mm | falls short
TEK17, sections 12-11 and 12-15(1) and (2), with the official guidance: 12-11(2) (2017) | norway-tek17 | no-guard | place=terrace; drop=500 mm; guard=none | does not apply
TEK10, section 12-11: 12-11(2) (2010) | norway-tek10 | no-guard | place=terrace; drop=500 mm; guard=none | falls short
BR18, sections 58 to 60: Section 58 (BR18, historic version 2) | denmark-br18 | stair-rail-too-low | place=stair; height=800 mm | meets
BR18, sections 58 to 60: Section 58 (BR18, historic version 2) | denmark-br18 | rail-beside-wide-well-too-low | place=stair; well width=300 mm; height=800 mm | does not apply
BR18, sections 58 to 60: Section 58 (BR18, historic version 2) | denmark-br18 | rail-beside-wide-well-too-low | place=stair; well width=310 mm; height=800 mm | falls short
BCA Approved Document H.3.2 to H.3.4: H.3.2.1, notes (version 6.0 and later) | singapore-h | rail-too-low-above-kerb | place=balcony; drop=2600 mm; solid part height=160 mm; solid part top width=160 mm; height above seat=840 mm; height=1000 mm | falls short
BCA Approved Document H.3.2 to H.3.4: H.3.4.1 (version 6.0 and later) | singapore-h | bottom-gap | place=balcony; drop=2600 mm; bottom gap=10 mm | falls short
Kerala Municipality Building Rules, chapter XVII, rules 112 to 114: Rule 113 (as published) | india-kerala-high-rise | rail-too-low | place=balcony; drop=2000 mm; height=1199 mm | falls short
Bouwbesluit 2012, articles 2.16 to 2.18: 2.18 (2012) | netherlands-2012 | high-rail-too-low | place=balcony; drop=13000 mm; height=1000 mm | does not apply
Bouwbesluit 2012, articles 2.16 to 2.18: 2.18 (2012) | netherlands-2012 | rail-too-low | place=balcony; drop=13000 mm; height=1000 mm | meets
Bouwbesluit 2012, articles 2.16 to 2.18: 2.18 (2012) | netherlands-2012 | high-rail-too-low | place=balcony; drop=13001 mm; height=1000 mm | falls short
";

#[test]
fn limits_of_texts_elsewhere_fall_where_the_texts_put_them() {
    judge(ROWS, None);
}
