//! Worked cases that tell neighbouring texts apart: the same guard, another text, another
//! verdict; and each limit that was read lately, at it and beside it. The verdicts we worked out by
//! hand from the words of the clause, apart from the code.

use super::judge;

/// source | ruleset | rule | readings | verdict of the reading alone.
const ROWS: &str = "
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2021 | no-guard | place=deck; drop=26 in; guard=none | does not apply
Wisconsin Administrative Code SPS 321.04(3)(c): SPS 321.04(3)(c) (as read in 2026) | wisconsin-dwelling | no-guard | place=deck; drop=26 in; guard=none | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2021 | rail-too-low | place=balcony; use=dwelling; shared=no; storeys=3; dwellings in building=12; location=outside; own way out=no; drop=9 ft; height=38 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2018 | rail-too-low | place=balcony; use=dwelling; shared=no; storeys=3; dwellings in building=12; location=outside; own way out=no; drop=9 ft; height=38 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2021 | rail-too-low | place=balcony; use=dwelling; shared=no; storeys=3; dwellings in building=6; location=outside; own way out=yes; drop=9 ft; height=38 in | does not apply
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3, exceptions (2015, 2021 and 2024) | us-buildings-2021 | rail-in-dwelling-too-low | place=balcony; use=dwelling; shared=no; storeys=3; dwellings in building=6; location=outside; own way out=yes; drop=9 ft; height=38 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.8 (2015, 2021 and 2024) | us-buildings-2015 | window-can-be-fallen-from | place=window; use=dwelling; sill top height=20 in; sill height=38 in; sill above ground=10 ft; opening=12 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.8 (2015, 2021 and 2024) | us-buildings-2021 | window-can-be-fallen-from | place=window; use=dwelling; sill height=38 in; sill above ground=10 ft; opening=12 in | meets
California Building Code 1011.11, 1015.3 and 1015.8: 1015.3 (2025) | california-buildings-2025 | rail-too-low | place=balcony; use=dwelling; shared=no; storeys=3; dwellings in building=12; location=outside; drop=9 ft; height=40 in | falls short
International Residential Code R312.2.1 in the prints of Arkansas, Colorado, Pennsylvania: R312.2.1, in 2024 R321.2.1 (2021 and 2024) | us-windows-2021 | window-can-be-fallen-from | place=window; sill height=30 in; sill above ground=10 ft; opening=12 in | meets
Minnesota Rules 1309.0312: 1309.0312 (print of 31 March 2020) | minnesota-windows-2020 | window-can-be-fallen-from | place=window; replaced window=no; sill height=30 in; sill above ground=10 ft; opening=12 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.8 (2015, 2021 and 2024) | us-buildings-2021 | window-can-be-fallen-from | place=window; use=dwelling; sill height=30 in; sill above ground=10 ft; opening=12 in | falls short
Oregon Residential Specialty Code R311.7.8 and R312.1.3: R312.1.3, exception 2 (2021) | oregon-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 7/8 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 7/8 in | falls short
Ontario Building Code, O. Reg. 332/12: 9.8.8.3.(1) (consolidated text of February 2025) | ontario-2012 | shared-rail-too-low | place=deck; use=dwelling; shared=yes; dwellings in building=4; drop=1500 mm; height=950 mm | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.3.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | shared-rail-too-low | place=deck; use=dwelling; shared=yes; dwellings in building=4; drop=1500 mm; height=950 mm | falls short
Ontario Building Code, O. Reg. 332/12: 9.8.8.3.(3) (consolidated text of February 2025) | ontario-2012 | low-outside-rail-too-low | place=deck; use=dwelling; shared=no; drop=1500 mm; height=950 mm | meets
National Building Code, 2023 Alberta Edition: 9.8.8.3.(3) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | low-outside-rail-too-low | place=deck; use=dwelling; shared=no; drop=1500 mm; height=950 mm | meets
Ontario Building Code, O. Reg. 332/12: 9.8.8.3.(6) (consolidated text of February 2025) | ontario-2012 | high-outside-rail-too-low | place=landing; location=outside; use=dwelling; drop=11 m; height=1100 mm | falls short
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.22 (in force since 1 January 2024) | netherlands-2024 | gap-too-wide | place=balcony; drop=3 m; opening=100 mm at 300 mm; bottom gap=none | meets
Approved Document K, protection from falling, collision and impact: 3.3a (2013, with its amendments of 2013) | uk-approved-document-k | gap-too-wide | place=balcony; use=dwelling; drop=3 m; opening=100 mm at 300 mm; bottom gap=none | falls short
Ontario Building Code, O. Reg. 332/12: 9.8.8.5.(1) (consolidated text of February 2025) | ontario-2012 | gap-too-wide | place=balcony; use=dwelling; drop=3 m; opening=100 mm at 300 mm; bottom gap=none | falls short
Código Técnico de la Edificación, DB-SUA, SUA 1, 3.1 and 3.2: 3.2.3 b (2022) | spain-sua-1 | gap-too-wide | place=balcony; drop=3 m; opening=100 mm at 300 mm; bottom gap=none | falls short
BayBO, article 36: Article 36(1) (as quoted) | germany-bavaria | no-guard | place=terrace; drop=700 mm; guard=none | falls short
HBO 2018, section 41, in part: Section 41(1) no. 1 (2018) | germany-hesse-2018 | no-guard | place=terrace; use=dwelling; drop=700 mm; guard=none | does not apply
BauO NRW, section 41(1) to (5): Section 41(1) (until 2018, in two copies) | germany-north-rhine-westphalia-2000 | no-guard | place=terrace; drop=700 mm; guard=none | does not apply
California Health and Safety Code, section 115923: 115923 (as read in 2026) | california-pools | barrier-too-low | place=pool; height=54 in | falls short
Safety Barrier Guidelines for Residential Pools, publication 362: Publication 362, barriers (reprint) | us-pool-barriers | barrier-too-low | place=pool; height=54 in | meets
California Health and Safety Code, section 115923: 115923 (as read in 2026) | california-pools | gap-too-wide | place=pool; opening=4 in | falls short
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(C) (text to 25 October 2024) | massachusetts-rental-2024 | new-rail-too-low | place=porch; dwellings in building=24; built=2005; drop=9 ft; height=38 in | falls short
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(C) (text to 25 October 2024) | massachusetts-rental-2024 | rail-too-low | place=porch; dwellings in building=1; built=1980; drop=9 ft; height=36 in | meets
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(B) (text to 25 October 2024) | massachusetts-rental-2024 | new-stair-rail-too-low | place=stair; built=2005; drop=10 in; height=33 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.3.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | shared-rail-too-low | place=stair; location=inside; shared=yes; dwellings in building=6; drop=2600 mm; height=950 mm | falls short
Quebec Construction Code, chapter I, Building, 9.8.7 and 9.8.8: 9.8.8.1.(3) (on the national code of 2010) | quebec-2010 | no-guard-at-inside-stair | place=stair; location=inside; risers=3; drop=540 mm; guard=none | falls short
HUD NSPIRE standard, guardrail, version 3.0 of 11 August 2023: guardrail, height (2023) | us-rental-inspection-2023 | rail-too-low | place=landing; drop=8 ft; height=33 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2021 | stair-rail-too-low | place=stair; use=dwelling; shared=yes; drop=8 ft; height=33 in | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(4) (in force since 1 January 2018) | finland-2017 | high-rail-too-low | place=balcony; shared=no; drop=25 m; height=1000 mm | does not apply
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(4) (in force since 1 January 2018) | finland-2017 | high-rail-too-low | place=balcony; shared=yes; drop=25 m; height=1000 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 8(2) (in force since 1 January 2018) | finland-2017 | level-gap-too-high | place=balcony; drop=3 m; infill=horizontal bars; opening=12 mm at 300 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 8(2) (in force since 1 January 2018) | finland-2017 | gap-too-wide | place=balcony; drop=3 m; infill=balusters; opening=100 mm at 300 mm | meets
Vyhláška 146/2024 Sb., section 34: Section 34(5) (in force since 1 July 2024) | czech-windows-2024 | sill-too-narrow | place=window; drop=5 m; height=850 mm; guard thickness=150 mm | falls short
British Columbia Building Code 9.8.8.6 and 9.8.8.1.(5) and (6): 9.8.8.1.(5) and (6) (2006 and 2012) | british-columbia-2012 | window-can-be-fallen-from | place=window; dwellings in building=1; sill top height=290 mm; drop=3220 mm; opening=300 mm | does not apply
National Building Code, 2023 Alberta Edition: 9.8.8.1.(4) and (5) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | window-can-be-fallen-from | place=window; sill height=290 mm; sill above ground=3.5 m; opening=300 mm | falls short
HUD NSPIRE standard, handrail, version 3.0 of 16 June 2023: handrail, height, moderate (2023) | us-rental-inspection-2023 | handrail-height | place=stair; handrail=separate; handrail height=27 15/16 in | falls short
HUD NSPIRE standard, handrail, version 3.0 of 16 June 2023: handrail, height, moderate (2023) | us-rental-inspection-2023 | handrail-height | place=stair; handrail=separate; handrail height=42 in | meets
19 CSR 30-60.100: 30-60.100 (as read in 2026) | missouri-child-care | bars-too-far-apart | place=landing; drop=9 ft; infill=balusters; opening=3 3/4 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2021 | gap-too-wide | place=landing; drop=9 ft; opening=3 3/4 in; bottom gap=none | meets
Ontario Building Code, O. Reg. 332/12: 9.8.8.1.(5) and (6) (consolidated text of February 2025) | ontario-2012 | window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=1; sill top height=300 mm; drop=3 m; opening=300 mm | does not apply
Ontario Building Code, O. Reg. 332/12: 3.3.1.17.(2) (consolidated text of February 2025) | ontario-2012 | public-gap-too-wide | place=landing; use=public; drop=3 m; opening=100 mm; bottom gap=none | meets
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.21(3) (in force since 1 January 2024) | netherlands-2024 | window-rail-too-low | place=window; drop=16 m; height=870 mm | meets
HUD NSPIRE standard, guardrail, version 3.0 of 11 August 2023: guardrail, missing (2023) | us-rental-inspection-2023 | no-guard | place=porch; drop=30 in; guard=none | falls short
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(C) (text to 25 October 2024) | massachusetts-rental-2024 | no-guard | place=porch; drop=30 in; guard=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2021 | no-guard | place=porch; drop=30 in; guard=none | does not apply
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | no-guard | place=porch; drop=30 in; guard=none | does not apply
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.15 (text in force on 1 January 2025) | netherlands-existing-2024 | no-guard | place=balcony; drop=1501 mm; guard=none | falls short
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.17 (text in force on 1 January 2025) | netherlands-existing-2024 | gap-too-wide | place=balcony; drop=3 m; opening=200 mm at 300 mm; bottom gap=none | meets
New York, Multiple Dwelling Law section 52: section 52 (statute) | new-york-old-flats-1929 | stair-rail-above-its-band | place=stair; built=1950; height=33 in | not settled
New York, Multiple Dwelling Law section 52: section 52 (statute) | new-york-old-flats-1929 | stair-rail-too-low | place=stair; built=1950; height=30 in | meets
New York, Multiple Dwelling Law section 52: section 52 (statute) | new-york-old-flats-1929 | stair-rail-too-low | place=stair; built=1950; height=29 15/16 in | falls short
New York, Multiple Dwelling Law section 52: section 52 (statute) | new-york-old-flats-1929 | landing-rail-above-its-band | place=landing; built=1950; height=36 in | meets
Transcription of BC 1015.3, 1015.4 and of the text on handrails: 1015.3 (as transcribed) | new-york-city | rail-too-low | place=balcony; use=dwelling; shared=no; dwellings in building=12; location=outside; drop=9 ft; height=38 in | falls short
An architect's comparison of Technical Guidance Document K of 2014 with that of 1997: 1.1.19 (2014) | ireland-tgd-k-2014 | step-triangle-too-wide | place=stair; drop=2600 mm; stair triangle=rise 180 going 280 lift 25 mm; bottom gap=25 mm | falls short
The committee's explanation of NF P01-012 of 2024, cited by a third party: Footholds (2024) | france-2024 | foothold-moves-the-floor | place=balcony; drop=3 m; foothold=120 mm high; height above seat=880 mm | not settled
The committee's explanation of NF P01-012 of 2024, cited by a third party: Openings (2024) | france-2024 | upper-gap-too-wide | place=balcony; drop=3 m; opening=180 mm at 900 mm | meets
Landesbauordnung Baden-Württemberg, section 16(3) to (8): Section 16(6) (as amended on 18 March 2025) | germany-baden-wuerttemberg | rail-too-low | place=balcony; drop=30 m; height=0.9 m; guard thickness=60 mm | meets
Strata Schemes Management Regulation 2016, clause 30, and of 2010, clause 31: clause 30 (2013 and 2016) | new-south-wales-windows-2013 | window-can-be-fallen-from | place=window; sill height=1699 mm; drop=2000 mm; opening=125 mm | falls short
Strata Schemes Management Regulation 2016, clause 30, and of 2010, clause 31: clause 30 (2013 and 2016) | new-south-wales-windows-2013 | window-can-be-fallen-from | place=window; sill height=1700 mm; drop=2000 mm; opening=125 mm | does not apply
Two restatements of the table of section 298(2) that agree, one in an audited calculation: 298(2) (2022) | poland-2022 | block-gap-too-wide | use=dwelling; place=balcony; dwellings in building=12; location=outside; opening=120 mm | meets
New Jersey edition of the International Residential Code, R311.7.8.1: R311.7.8.1 (2021) | new-jersey-dwelling-2021 | handrail-height | place=stair; handrail=separate; handrail height=30 in | meets
International Residential Code R301.5, R311.7 and R312: R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2021 | handrail-height | place=stair; handrail=separate; handrail height=30 in | falls short
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=36 in | falls short
Municipal Code of Chicago 13-124-330, 13-124-335 and 13-52-100, archived: 13-124-335 (before 2019) | chicago-older-text | upper-gap-too-wide | place=landing; opening=5 in at 36 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.4, exception 1 (2015, 2021 and 2024) | us-buildings-2021 | upper-gap-too-wide | place=landing; use=public; shared=yes; storeys=5; drop=9 ft; opening=5 in at 36 in | falls short
Vyhláška 137/1998 Sb., section 38: Section 38 (last state, end of 2006) | czech-1998 | rail-too-low | place=balcony; dwellings in building=12; drop=4 m; height=1000 mm | meets
Vyhláška 137/1998 Sb., section 38: Section 38 (last state, end of 2006) | czech-1998 | gap-too-wide | place=balcony; dwellings in building=12; drop=4 m; height=1000 mm; opening=120 mm | meets
Brandenburgische Bauordnung, section 33: Section 33 (until 1 July 2016) | germany-brandenburg-2016 | high-rail-too-low | place=balcony; drop=12 m; height=0.9 m | falls short
DVO-NBauO, section 4(1) to (3): Section 4(2) (since 1 November 2012) | germany-lower-saxony-2012 | rail-too-low | place=balcony; drop=12 m; height=0.9 m | meets
N.J.A.C. 5:27-4.7: 5:27-4.7 (as read in 2026) | new-jersey-rooming-houses | no-guard-at-stair | place=stair; risers=3; guard=none | falls short
K.A.R. 28-4-423: 28-4-423 (2021 and January 2025) | kansas-child-care | gap-too-wide | place=stair; infill=balusters; opening=4 1/16 in | falls short
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: ramps, number not read (2024) | us-dwelling-2024 | ramp-handrail-missing | place=ramp; ramp slope=4 in; handrail=none | falls short
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: ramps, number not read (2024) | us-dwelling-2024 | ramp-handrail-missing | place=ramp; ramp slope=3 1/4 in; handrail=none | does not apply
Minnesota Rules 1309.0312: 1309.0312 (print of 31 March 2020) | minnesota-windows-2020 | window-can-be-fallen-from | place=window; replaced window=yes; sill height=30 in; sill above ground=10 ft; opening=12 in | does not apply
International Residential Code R312.2.1: R312.2.1 (2015 and 2018) | us-windows-2015 | window-can-be-fallen-from | place=window; sill top height=23 1/2 in; sill height=24 in; sill above ground=10 ft; opening=5 in | falls short
International Residential Code R312.2.1 in the prints of Arkansas, Colorado, Pennsylvania: R312.2.1, in 2024 R321.2.1 (2021 and 2024) | us-windows-2021 | window-can-be-fallen-from | place=window; sill top height=23 1/2 in; sill height=24 in; sill above ground=10 ft; opening=5 in | meets
Florida Building Code, Building, eighth edition, 1015.8: 1015.8 (2023) | florida-buildings-2023 | window-can-be-fallen-from | place=window; use=dwelling; sill top height=20 in; sill height=38 in; sill above ground=10 ft; opening=12 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.7.1 (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | ramp-handrail-missing | place=ramp; shared=no; ramp rise=401 mm; handrail=none | falls short
International Existing Building Code 505.2 and 702.4 (2021 and 2024) | us-existing-buildings-2021 | flat-window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=12; replaced window=yes; sill height=30 in; sill above ground=8 ft; opening=12 in | falls short
International Existing Building Code 505.2 and 702.4 (2021 and 2024) | us-existing-buildings-2021 | flat-window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=12; replaced window=yes; sill height=35 in; sill above ground=73 in; opening=3 15/16 in | meets
International Existing Building Code 802.5.1 (2021 and 2024) | us-existing-buildings-2021 | no-guard | place=balcony; drop=30 in; guard=none | does not apply
International Existing Building Code 802.5.2 (2021 and 2024) | us-existing-buildings-2021 | new-rail-too-low | place=balcony; use=public; state=proposed; drop=9 ft; height=41 in | falls short
International Existing Building Code 802.5.2 (2021 and 2024) | us-existing-buildings-2021 | new-rail-too-low | place=balcony; use=public; state=existing; drop=9 ft; height=34 in | does not apply
International Existing Building Code 804.10 (2021) | us-existing-buildings-2021 | handrail-missing | place=stair; risers=2; handrail=none | does not apply
International Existing Building Code 804.13.1 (2024) | us-existing-buildings-2021 | handrail-on-one-side | place=stair; risers=9; flight width=66 in; handrail=separate; handrail sides=one side | does not apply
International Residential Code R311.7.8.5 (2018 and 2021) | us-handrails-2018 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=2 in | meets
International Residential Code R311.7.8.5 (2018 and 2021) | us-handrails-2018 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=2 1/16 in | falls short
International Residential Code R311.8.3 (2018 and 2021) | us-handrails-2018 | ramp-handrail-missing | place=ramp; ramp slope=4 in; handrail=none | falls short
International Residential Code R311.7.8.2 (2015) | us-handrails-2015 | handrail-end-free | place=stair; risers=4; handrail=separate; handrail ends=at a post | meets
International Building Code 1014.6 (2021 and 2024) | us-building-handrails-2021 | handrail-ends-at-the-step | place=stair; use=public; handrail=separate; handrail extension=12 in | meets
International Building Code 1014.3.1 (2015) | us-building-handrails-2015 | handrail-too-thick | place=stair; use=public; handrail=separate; handrail shape=other; handrail thickness=7/8 in | meets
International Building Code 1014.3.1 (2021 and 2024) | us-building-handrails-2021 | handrail-too-thick | place=stair; use=public; handrail=separate; handrail shape=other; handrail thickness=7/8 in | falls short
North Carolina Building Code 1015.4 (as read in 2026) | north-carolina-buildings | bottom-gap-too-wide | place=deck; use=public; drop=9 ft; bottom gap=2 in | falls short
International Building Code 1015.4 (2021) | us-buildings-2021 | gap-too-wide | place=deck; use=public; drop=9 ft; opening=none; bottom gap=2 in | meets
North Carolina Residential Code (as read in 2026) | north-carolina-dwelling | outside-handrail-too-thick | place=stair; location=outside; handrail=separate; handrail thickness=3 1/2 in | meets
Wisconsin Administrative Code, deck appendix, section 13 (as read in 2026) | wisconsin-decks | deck-gap-too-wide | place=deck; drop=25 in; opening=4 1/8 in; bottom gap=none | falls short
Wisconsin Administrative Code SPS 321.04(3)(c) (as read in 2026) | wisconsin-dwelling | gap-too-wide | place=deck; drop=25 in; opening=4 1/8 in; bottom gap=none | meets
New York Multiple Residence Law section 132 (statute) | new-york-multiple-residence | handrail-on-one-side | place=stair; flight width=44 in; handrail=separate; handrail sides=one side | falls short
19 CSR 30-61.085 (as read in 2026) | missouri-family-child-care | no-guard | place=deck; drop=24 in; guard=none | does not apply
19 CSR 30-61.085 (as read in 2026) | missouri-family-child-care | handrail-missing | place=stair; risers=3; handrail=none | does not apply
Vyhláška 268/2009 Sb. (text to November 2021) | czech-windows-2009 | sill-too-low | place=window; drop=5 m; height=850 mm; guard thickness=150 mm | meets
Vyhláška 146/2024 Sb., section 34 (since 1 July 2024) | czech-windows-2024 | sill-too-narrow | place=window; drop=5 m; height=850 mm; guard thickness=150 mm | falls short
Landesbauordnung Schleswig-Holstein, section 43 (older print, without a year) | germany-schleswig-holstein | rail-too-low | place=balcony; drop=12 m; height=0.9 m | meets
GB 50096-2011, in two restatements | china-homes-2011 | rail-too-low | place=balcony; storeys=8; height=1100 mm | meets
GB 50096-2011, in two restatements | china-homes-2011 | rail-too-low | place=balcony; storeys=7; height=1050 mm | falls short
GB 55038-2025, in a clause list | china-homes-2025 | rail-too-low | place=balcony; height=1100 mm | falls short
GB 55031-2022, in two restatements | china-buildings-2022 | rail-too-low | place=balcony; height=1100 mm | meets
Regulations on Standards for Housing Construction, article 18, quoted | korea-housing | gap-too-wide | place=balcony; opening=101 mm | falls short
NBR 14718:2019, told by the trade press | brazil-nbr-14718-2019 | no-guard | place=balcony; drop=1 m; guard=none | does not apply
NP 4491:2009, told by an association | portugal-np-4491-2009 | gap-too-wide | place=balcony; opening=90 mm | meets
NBN B 03-004:2017, by the summary of the standards body | belgium-nbn-2017 | no-guard | place=balcony; drop=1 m; guard=none | falls short
";

#[test]
fn neighbouring_texts_are_told_apart() {
    judge(ROWS, None);
}
