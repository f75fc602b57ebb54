//! Each limit of the texts, at it and beside it, where the tables of neighbours and of the
//! older readings do not have it: what the words of the clause say of an exact value. The
//! verdicts we worked out by hand from those words, apart from the code.

use super::judge;

/// source: clause (edition) | ruleset | rule | readings | verdict of the reading alone.
const ROWS: &str = "
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2015 | no-guard | place=deck; drop=30 in; guard=none | does not apply
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2015 | no-guard | place=deck; drop=30 1/16 in; guard=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2021 | rail-too-low | place=deck; drop=9 ft; height=36 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2021 | rail-too-low | place=deck; drop=9 ft; height=35 15/16 in | falls short
International Residential Code R301.5, R318.7, R320 and R321: R321.1.2, exception 1 (2024) | us-dwelling-2024 | stair-rail-too-low | place=stair; drop=9 ft; height=34 in | meets
International Residential Code R301.5, R318.7, R320 and R321: R321.1.2, exception 2, and R320.2 (2024) | us-dwelling-2024 | guard-top-as-handrail | place=stair; handrail=top of the guard; height=38 in | meets
International Residential Code R301.5, R318.7, R320 and R321: R321.1.2, exception 2, and R320.2 (2024) | us-dwelling-2024 | guard-top-as-handrail | place=stair; handrail=top of the guard; height=38 1/16 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2021 | gap-too-wide | place=deck; drop=9 ft; opening=3 15/16 in; bottom gap=none | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2021 | gap-too-wide | place=deck; drop=9 ft; opening=4 in; bottom gap=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 5/16 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 3/8 in | falls short
International Residential Code R301.5, R318.7, R320 and R321: R318.7.8 (2024) | us-dwelling-2024 | handrail-missing | place=stair; risers=3; handrail=none | does not apply
International Residential Code R301.5, R318.7, R320 and R321: R318.7.8 (2024) | us-dwelling-2024 | handrail-missing | place=stair; risers=4; handrail=none | falls short
International Residential Code R301.5, R318.7, R320 and R321: R320.5 (2024) | us-dwelling-2024 | handrail-end-gap | place=stair; risers=13; handrail=separate; handrail ends=returned; handrail end gap=1/4 in | meets
International Residential Code R301.5, R318.7, R320 and R321: R320.5 (2024) | us-dwelling-2024 | handrail-end-gap | place=stair; risers=13; handrail=separate; handrail ends=returned; handrail end gap=5/16 in | falls short
International Residential Code R311.7.8 in the prints of Alaska and Tennessee (2018) and: R311.7.8.2 (2018 and 2021) | us-handrails-2018 | handrail-stands-out | place=stair; handrail=separate; handrail projection=4 1/2 in | meets
International Residential Code R311.7.8 in the prints of Alaska and Tennessee (2018) and: R311.7.8.2 (2018 and 2021) | us-handrails-2018 | handrail-stands-out-too-far | place=stair; handrail=separate; handrail projection=6 9/16 in | falls short
International Residential Code R311.7.8 in the prints of Alabama and the District of: R311.7.8.3 (2015) | us-handrails-2015 | grip-above-grooves | place=stair; handrail=separate; handrail shape=with finger grooves; handrail grip width=2 3/4 in | meets
International Residential Code R311.7.8 in the prints of Alaska and Tennessee (2018) and: R311.7.8.5 (2018 and 2021) | us-handrails-2018 | grip-above-grooves | place=stair; handrail=separate; handrail shape=with finger grooves; handrail grip width=1 3/16 in | falls short
International Residential Code R312.2.1: R312.2.1 (2015 and 2018) | us-windows-2015 | window-can-be-fallen-from | place=window; sill top height=24 in; sill above ground=10 ft; opening=5 in | meets
International Residential Code R312.2.1: R312.2.1 (2015 and 2018) | us-windows-2015 | window-can-be-fallen-from | place=window; sill top height=23 15/16 in; sill above ground=72 1/16 in; opening=5 in | falls short
International Residential Code R312.2.1: R312.2.1 (2015 and 2018) | us-windows-2015 | window-can-be-fallen-from | place=window; sill top height=23 15/16 in; sill above ground=72 in; opening=5 in | does not apply
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2006 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 5/16 in | meets
Change history 2000 to 2005 of the model codes: no wider opening on stairs in the 2000: R312 (2005) | us-dwelling-2003 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 5/16 in | falls short
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=42 in | meets
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=41 15/16 in | falls short
Florida Building Code, Residential, eighth edition, R312.1.1: R312.1.1 (2023) | florida-dwelling-2023 | no-guard | place=deck; drop=30 1/16 in; guard=none | falls short
Montana edition of the International Residential Code, R312.1.1: R312.1.1 (2021) | montana-dwelling-2021 | no-guard | place=deck; drop=30 in; guard=none | does not apply
Oregon Residential Specialty Code R311.7.8 and R312.1.3: R312.1.3, exception 2 (2021) | oregon-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 15/16 in | meets
Oregon Residential Specialty Code R311.7.8 and R312.1.3: R312.1.3, exception 2 (2021) | oregon-dwelling-2021 | stair-gap-too-wide | place=stair; drop=9 ft; opening=5 in | falls short
Washington State Residential Code R312.1: R312.1 (2021) | washington-dwelling-2021 | loft-rail-too-low | place=floor edge; drop=9 ft; ceiling height=60 in; height=30 in | not settled
Washington State Residential Code R312.1: R312.1.2 (2021) | washington-dwelling-2021 | rail-too-low | place=floor edge; drop=9 ft; ceiling height=96 in; height=30 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | south-carolina-dwelling-2021 | no-guard | place=deck; drop=30 1/16 in; guard=none | falls short
South Carolina Residential Code R312.1.1: R312.1.1 (2021) | south-carolina-dwelling-2021 | no-guard-above-slope | place=deck; drop=20 in; ground fall=9 7/8 in; guard=none | not settled
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | ohio-dwelling | no-guard | place=porch; drop=30 1/16 in; guard=none | falls short
Wisconsin Administrative Code SPS 321.04(3)(c): SPS 321.04(3)(c) (as read in 2026) | wisconsin-dwelling | no-guard | place=deck; drop=24 in; guard=none | does not apply
Wisconsin Administrative Code SPS 320 to 325, deck appendix, section 13: deck appendix, 13 (as read in 2026) | wisconsin-decks | cables-too-far-apart | place=deck; drop=30 in; infill=cables; opening=3 9/16 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2024 | rail-too-low | place=balcony; use=public; shared=yes; drop=9 ft; height=42 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | us-buildings-2024 | rail-too-low | place=balcony; use=public; shared=yes; drop=9 ft; height=41 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.4, exception 1 (2015, 2021 and 2024) | us-buildings-2021 | upper-gap-too-wide | place=landing; use=public; shared=yes; drop=9 ft; opening=4 1/4 in at 37 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.4 (2015, 2021 and 2024) | us-buildings-2021 | gap-too-wide | place=landing; use=public; shared=yes; drop=9 ft; opening=4 1/4 in at 35 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.8 (2015, 2021 and 2024) | us-buildings-2024 | window-can-be-fallen-from | place=window; use=dwelling; sill height=35 in; sill above ground=80 in; opening=5 in | falls short
New Jersey edition of the International Building Code, 1014.2, 1015.3 and 1015.8: 1015.8 (2021) | new-jersey-buildings-2021 | window-can-be-fallen-from | place=window; use=dwelling; sill height=30 in; sill above ground=80 in; opening=5 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | connecticut-buildings | rail-too-low | place=landing; use=public; shared=yes; drop=9 ft; height=36 in | falls short
Connecticut State Building Code, chapter 10, as changed: 1015.3 (as read in 2026) | connecticut-bed-and-breakfast | rail-too-low | place=landing; use=public; drop=9 ft; height=36 in | meets
Connecticut State Building Code, chapter 10, as changed: 1015.4 (as read in 2026) | connecticut-bed-and-breakfast | gap-too-wide | place=landing; use=public; drop=9 ft; opening=6 in; bottom gap=none | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.3 (2015, 2021 and 2024) | oregon-buildings-2021 | rail-too-low | place=landing; use=public; shared=yes; drop=9 ft; height=41 in | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1014.2 (2015, 2021 and 2024) | washington-buildings-2021 | handrail-height | place=stair; use=public; handrail=separate; handrail height=33 in | falls short
International Building Code 1014: 1014.8 (2021 and 2024) | us-building-handrails-2021 | handrail-stands-out | place=stair; use=public; handrail=separate; handrail projection=4 9/16 in | falls short
International Existing Building Code 505.2, 702.4, 802.5, 804.10, 804.12 and 1203: 505.2, 702.4 (2021 and 2024) | us-existing-buildings-2021 | flat-window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=12; replaced window=yes; sill height=35 in; sill above ground=73 in; opening=3 15/16 in | meets
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.4 (2010) | us-accessible-handrails-2010 | handrail-height | place=stair; handrail=separate; handrail height=38 in | meets
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.4 (2010) | us-accessible-handrails-2010 | handrail-height | place=stair; handrail=separate; handrail height=38 1/16 in | falls short
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.5 (2010) | us-accessible-handrails-2010 | handrail-too-close-to-wall | place=stair; handrail=separate; handrail clearance=1 1/2 in | meets
29 CFR 1910.29(b) and (f): 1910.29(b)(1) (from 17 January 2017) | us-workplace | rail-too-low | place=deck; use=workplace; drop=9 ft; height=45 in | meets
HUD NSPIRE standard, guardrail, version 3.0 of 11 August 2023, as a housing authority and: guardrail, height (2023) | us-rental-inspection-2023 | rail-too-low | place=porch; drop=9 ft; height=30 in | meets
HUD NSPIRE standard, guardrail, version 3.0 of 11 August 2023, as a housing authority and: guardrail, height (2023) | us-rental-inspection-2023 | rail-too-low | place=porch; drop=9 ft; height=29 15/16 in | falls short
HUD NSPIRE standard, handrail, version 3.0 of 16 June 2023, as an inspection contractor: handrail, height, moderate (2023) | us-rental-inspection-2023 | handrail-height | place=stair; handrail=separate; handrail height=28 in | meets
HUD NSPIRE standard, handrail, version 3.0 of 16 June 2023, as an inspection contractor: handrail, missing, low (2023) | us-rental-inspection-2023 | handrail-missing | place=stair; risers=3; handrail=none | does not apply
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(C) (text to 25 October 2024) | massachusetts-rental-2024 | rail-too-low | place=porch; dwellings in building=2; built=1980; drop=9 ft; height=36 in | meets
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(D) (text to 25 October 2024) | massachusetts-rental-2024 | gap-too-wide | place=porch; built=1980; drop=9 ft; infill=balusters; opening=5 7/8 in | meets
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(D) (text to 25 October 2024) | massachusetts-rental-2024 | new-gap-too-wide | place=porch; built=2005; drop=9 ft; opening=4 1/2 in; bottom gap=none | meets
New York City Administrative Code 27-2043.1, with the figures from the city's notice: Administrative Code 27-2043.1 (as read in 2026) | new-york-city-windows | window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=3; children=6 years; opening=4 1/2 in | meets
New York City Administrative Code 27-2043.1, with the figures from the city's notice: Administrative Code 27-2043.1 (as read in 2026) | new-york-city-windows | window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=3; children=6 years; opening=4 9/16 in | falls short
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | handrail-missing | place=stair; risers=4; handrail=none | does not apply
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | handrail-missing | place=stair; risers=5; handrail=none | falls short
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | handrail-height | place=stair; handrail=separate; handrail height=42 in | meets
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | handrail-height | place=stair; handrail=separate; handrail height=42 1/16 in | falls short
City of Wauseon, housing code: housing code (ordinance 1989-36) | wauseon-housing-1989 | handrail-missing | place=stair; location=outside; risers=4; handrail=none | falls short
California Health and Safety Code, section 115923: 115923 (as read in 2026) | california-pools | barrier-too-low | place=pool; height=60 in | meets
Florida Statutes, section 515.29: 515.29 (as read in 2026) | florida-pools | barrier-too-low | place=pool; height=48 in | meets
Florida Statutes, section 515.29: 515.29 (as read in 2026) | florida-pools | gap-to-creep-through | place=pool; opening=3 in; bottom gap=none | not settled
K.A.R. 28-4-423: 28-4-423 (2021 and January 2025) | kansas-child-care | gap-too-wide | place=stair; infill=balusters; opening=4 in | meets
19 CSR 30-60.100: 30-60.100 (as read in 2026) | missouri-child-care | rail-too-low | place=landing; drop=9 ft; height=36 in | meets
19 CSR 30-60.100: 30-60.100 (as read in 2026) | missouri-child-care | gap-too-wide | place=landing; drop=9 ft; infill=panel; opening=3 1/2 in | falls short
19 CSR 30-60.100: 30-60.100 (as read in 2026) | missouri-child-care | bars-too-far-apart | place=landing; drop=9 ft; infill=balusters; opening=3 1/2 in | meets
Municipal Code of Chicago 13-124-330, 13-124-335 and 13-52-100, archived: 13-124-335 (before 2019) | chicago-older-text | gap-too-wide | place=landing; opening=3 15/16 in at 20 in | meets
Municipal Code of Chicago 13-124-330, 13-124-335 and 13-52-100, archived: 13-124-335 (before 2019) | chicago-older-text | gap-too-wide | place=landing; opening=4 in at 20 in | falls short
WAC 246-359-520: 246-359-520 (as published by the state) | washington-worker-housing | handrail-missing | place=stair; risers=3; handrail=none | falls short
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.1.(1), 3.3.1.17.(1) (consolidated text of February 2025) | ontario-2012 | no-guard | place=deck; drop=600 mm; ground fall=0 mm; guard=none | does not apply
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.1.(1), 3.3.1.17.(1) (consolidated text of February 2025) | ontario-2012 | no-guard | place=deck; drop=601 mm; guard=none | falls short
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.3.(3) (consolidated text of February 2025) | ontario-2012 | low-outside-rail-too-low | place=deck; use=dwelling; shared=no; drop=1800 mm; height=900 mm | meets
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.3.(1) (consolidated text of February 2025) | ontario-2012 | shared-rail-too-low | place=deck; use=dwelling; shared=yes; dwellings in building=4; drop=1200 mm; height=900 mm | falls short
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.3.(4) (consolidated text of February 2025) | ontario-2012 | stair-rail-too-low | place=stair; location=outside; use=dwelling; shared=no; drop=2500 mm; height=900 mm | meets
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.3.(6) (consolidated text of February 2025) | ontario-2012 | high-outside-rail-too-low | place=landing; location=outside; use=dwelling; drop=10.5 m; height=1070 mm | falls short
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.5.(3) (consolidated text of February 2025) | ontario-2012 | gap-in-guard-not-asked-for | place=deck; use=dwelling; drop=500 mm; opening=150 mm | falls short
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.7.4.(2) (consolidated text of February 2025) | ontario-2012 | handrail-height | place=stair; handrail=separate; handrail height=865 mm | meets
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.7.4.(2) (consolidated text of February 2025) | ontario-2012 | handrail-height | place=stair; handrail=separate; handrail height=1070 mm | meets
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.7.1 (consolidated text of February 2025) | ontario-2012 | handrail-on-one-side | place=stair; use=dwelling; shared=no; flight width=1200 mm; handrail=separate; handrail sides=one side | does not apply
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 9.8.8.1.(5) and (6) (consolidated text of February 2025) | ontario-2012 | window-can-be-fallen-from | place=window; use=dwelling; dwellings in building=6; sill top height=481 mm; drop=3 m; opening=300 mm | does not apply
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7 and 9.8.8, 3.3.1.17, 3.3.4.7 and: 3.3.4.8. (consolidated text of February 2025) | ontario-2012 | tall-building-window-can-be-fallen-from | place=window; use=dwelling; storeys=8; sill height=1000 mm; sill above ground=6 m; opening=100 mm | meets
Ontario Building Code, O. Reg. 332/12, division B, 9.8.7.3 and 9.8.7.6: 9.8.7.6. (consolidated text of February 2025) | ontario-handrails-2012 | handrail-stands-out | place=stair; handrail=separate; handrail projection=101 mm | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.1.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | no-guard | place=deck; drop=600 mm; guard=none | does not apply
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.3.(3) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | low-outside-rail-too-low | place=deck; shared=no; drop=1800 mm; height=900 mm | meets
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.3.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | shared-rail-too-low | place=deck; shared=yes; dwellings in building=4; drop=1200 mm; height=900 mm | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.5.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | gap-too-wide | place=deck; drop=900 mm; opening=100 mm; bottom gap=none | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.5.(4) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | gap-in-guard-not-asked-for | place=deck; drop=500 mm; opening=150 mm | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.5.(4) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | gap-in-guard-not-asked-for | place=deck; drop=500 mm; opening=200 mm | meets
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.6.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | climbable-infill | place=deck; drop=4.2 m; infill=horizontal bars | does not apply
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.7.4.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | handrail-height | place=stair; handrail=separate; handrail height=1070 mm | meets
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.7.1 (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | handrail-missing | place=stair; location=inside; shared=no; risers=3; handrail=none | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.7.1 (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | outside-handrail-missing | place=stair; location=outside; shared=no; risers=3; handrail=none | does not apply
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.1.(4) and (5) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | window-can-be-fallen-from | place=window; sill height=900 mm; sill above ground=1800 mm; opening=101 mm | falls short
National Building Code, 2023 Alberta Edition, division B, 9.8.4, 9.8.7 and 9.8.8 (pages: 9.8.8.1.(4) and (5) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | window-can-be-fallen-from | place=window; sill height=901 mm; sill above ground=1800 mm; opening=101 mm | does not apply
National Building Code, 2023 Alberta Edition, division B, 9.8.4 and 9.8.7 (pages 9-27 to: 9.8.7.1.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-handrails-2020 | handrail-out-of-reach | place=stair; shared=yes; dwellings in building=6; handrail=separate; handrail reach=750 mm | meets
National Building Code, 2023 Alberta Edition, division B, 9.8.4 and 9.8.7 (pages 9-27 to: 9.8.7.3.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-handrails-2020 | handrail-ends-at-lowest-step | place=stair; shared=yes; handrail=separate; handrail bottom extension=299 mm | falls short
Quebec Construction Code, chapter I, Building, 9.8.7 and 9.8.8, as reproduced with the: 9.8.7.5 (on the national code of 2010) | quebec-2010 | handrail-too-close-to-wall | place=stair; handrail=separate; handrail clearance=50 mm | meets
Quebec Construction Code, chapter I, Building, 9.8.7 and 9.8.8, as reproduced with the: 9.8.8.6 (on the national code of 2010) | quebec-2010 | foothold-in-reach | place=deck; foothold=500 mm high 15 mm deep | meets
Quebec Construction Code, chapter I, Building, 9.8.7 and 9.8.8, as reproduced with the: 9.8.8.6 (on the national code of 2010) | quebec-2010 | foothold-in-reach | place=deck; foothold=500 mm high 16 mm deep | not settled
Ville de Sainte-Adèle, règlement de construction 1314-2021-C: guards (in force on 17 March 2023) | quebec-sainte-adele-2023 | gap-too-wide | place=deck; drop=900 mm; opening=99 mm; bottom gap=none | meets
Ville de Sainte-Adèle, règlement de construction 1314-2021-C: guards (in force on 17 March 2023) | quebec-sainte-adele-2023 | gap-too-wide | place=deck; drop=900 mm; opening=100 mm; bottom gap=none | falls short
British Columbia Building Code 9.8.8.6 and 9.8.8.1.(5) and (6): 9.8.8.1.(5) and (6) (2006 and 2012) | british-columbia-2012 | window-can-be-fallen-from | place=window; dwellings in building=6; sill top height=451 mm; drop=3 m; opening=300 mm | does not apply
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.20 (in force since 1 January 2024) | netherlands-2024 | no-guard | place=balcony; drop=1000 mm; guard=none | does not apply
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.21 (in force since 1 January 2024) | netherlands-2024 | high-rail-too-low | place=balcony; drop=13 m; height=1.0 m | does not apply
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.22 (in force since 1 January 2024) | netherlands-2024 | gap-too-wide | place=balcony; drop=3 m; opening=101 mm at 300 mm; bottom gap=none | falls short
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.22 (in force since 1 January 2024) | netherlands-2024 | any-gap-too-wide | place=balcony; drop=3 m; opening=200 mm at 800 mm; bottom gap=none | meets
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.22 (in force since 1 January 2024) | netherlands-2024 | any-gap-too-wide | place=balcony; drop=3 m; opening=201 mm at 800 mm; bottom gap=none | falls short
Besluit bouwwerken leefomgeving, articles 4.20 to 4.23: 4.22 (in force since 1 January 2024) | netherlands-2024 | edge-gap-too-wide | place=balcony; drop=3 m; edge gap=50 mm | meets
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.15 (text in force on 1 January 2025) | netherlands-existing-2024 | no-guard | place=balcony; drop=1500 mm; guard=none | does not apply
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.16 (text in force on 1 January 2025) | netherlands-existing-2024 | rail-too-low | place=balcony; drop=3 m; height=900 mm | meets
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.16 (text in force on 1 January 2025) | netherlands-existing-2024 | stair-rail-too-low | place=stair; drop=3 m; height=600 mm | meets
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.17 (text in force on 1 January 2025) | netherlands-existing-2024 | edge-gap-too-wide | place=balcony; drop=3 m; edge gap=100 mm | meets
Besluit bouwwerken leefomgeving, articles 3.14 to 3.17 and 3.22: 3.22 (text in force on 1 January 2025) | netherlands-existing-2024 | escape-stair-handrail-height | place=stair; drop=3 m; handrail=separate; handrail height=1.0 m | meets
Rozporządzenie on technical conditions for buildings, sections 296, 298, 301 and 303: 296(1) (Dz.U. 2022 poz. 1225) | poland-2022 | no-guard-at-stair | place=stair; use=dwelling; drop=500 mm; guard=none | does not apply
Rozporządzenie on technical conditions for buildings, sections 296, 298, 301 and 303: 298(6) (Dz.U. 2022 poz. 1225) | poland-2022 | handrail-too-close-to-wall | place=stair; use=dwelling; handrail=separate; handrail clearance=50 mm | meets
Rozporządzenie on technical conditions for buildings, sections 296, 298, 301 and 303: 301 (Dz.U. 2022 poz. 1225) | poland-2022 | sill-too-low | place=window; use=dwelling; drop=6 m; height=850 mm | meets
Two restatements of the table of section 298(2) that agree, one in an audited calculation: 298(2) (2022) | poland-2022 | rail-too-low | place=balcony; use=dwelling; shared=no; height=0.9 m | meets
Two restatements of the table of section 298(2) that agree, one in an audited calculation: 298(2) (2022) | poland-2022 | public-gap-too-wide | place=landing; use=public; opening=200 mm | meets
BayBO, article 36, as a city authority quotes it: Article 36(1) (as quoted) | germany-bavaria | no-guard | place=terrace; drop=500 mm; guard=none | does not apply
BayBO, article 36, as a city authority quotes it: Article 36(1) (as quoted) | germany-bavaria | no-guard | place=terrace; drop=501 mm; guard=none | falls short
BauO NRW, section 41(1) to (5): Section 41(4) (until 2018, in two copies) | germany-north-rhine-westphalia-2000 | rail-too-low | place=balcony; drop=12 m; height=0.9 m | meets
DVO-NBauO, section 4(1) to (3): Section 4(1) (since 1 November 2012) | germany-lower-saxony-2012 | no-guard | place=balcony; drop=1000 mm; guard=none | does not apply
Landesbauordnung Baden-Württemberg, section 16(3) to (8): Section 16(7) (as amended on 18 March 2025) | germany-baden-wuerttemberg | edge-gap-too-wide | place=balcony; drop=3 m; edge gap=60 mm | meets
Código Técnico de la Edificación, DB-SUA, SUA 1, 3.1 and 3.2, quoted word for word: 3.1 (2022) | spain-sua-1 | no-guard | place=balcony; drop=550 mm; guard=none | does not apply
Código Técnico de la Edificación, DB-SUA, SUA 1, 3.1 and 3.2, quoted word for word: 3.2.1 (2022) | spain-sua-1 | high-rail-too-low | place=balcony; drop=6.0 m; height=900 mm | does not apply
Código Técnico de la Edificación, DB-SUA, SUA 1, 3.1 and 3.2, quoted word for word: 3.2.1 (2022) | spain-sua-1 | high-rail-too-low | place=balcony; drop=6.01 m; height=900 mm | falls short
Código Técnico de la Edificación, DB-SUA, SUA 1, 3.1 and 3.2, quoted word for word: 3.2.3 b (2022) | spain-sua-1 | gap-too-wide | place=balcony; drop=3 m; opening=99 mm; bottom gap=none | meets
D.M. 236/1989, 8.1.8 and 8.1.10, quoted word for word: 8.1.8, 8.1.10 (1989) | italy-dm-236-1989 | rail-too-low | place=balcony; height=1000 mm | meets
D.M. 236/1989, 8.1.8 and 8.1.10, quoted word for word: 8.1.8, 8.1.10 (1989) | italy-dm-236-1989 | gap-too-wide | place=balcony; opening=100 mm; bottom gap=none | falls short
Code de la construction et de l'habitation, article R134-59, as restated by a national: CCH R134-59 (2021) | france-2024 | window-bar-too-low | place=window; sill top height=900 mm; height=900 mm | does not apply
NP 4491:2009, by a child-safety association that took part in the draft, and by an: NP 4491 (2009) | portugal-np-4491-2009 | gap-too-wide | place=balcony; opening=91 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(1) (in force since 1 January 2018) | finland-2017 | no-guard | place=landing; drop=500 mm; guard=none | does not apply
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(1) (in force since 1 January 2018) | finland-2017 | no-guard | place=landing; drop=501 mm; guard=none | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(4) (in force since 1 January 2018) | finland-2017 | rail-too-low | place=landing; location=outside; shared=yes; drop=6 m; height=1000 mm | meets
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(4) (in force since 1 January 2018) | finland-2017 | high-rail-too-low | place=landing; shared=yes; drop=6.1 m; height=1000 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(5) (in force since 1 January 2018) | finland-2017 | inside-rail-too-low | place=landing; location=inside; shared=no; drop=2.99 m; height=900 mm | meets
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 7(4) (in force since 1 January 2018) | finland-2017 | rail-too-low | place=landing; location=inside; shared=no; drop=3 m; height=900 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 8(2) (in force since 1 January 2018) | finland-2017 | other-gap-too-wide | place=landing; drop=3 m; infill=panel; opening=31 mm | falls short
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 8(3) (in force since 1 January 2018) | finland-2017 | bottom-gap-too-high | place=landing; drop=3 m; bottom gap=50 mm | meets
Ympäristöministeriön asetus 1007/2017, sections 6 to 9 and 15: Section 9 (in force since 1 January 2018) | finland-2017 | handrail-ends-at-top-step | place=stair; use=public; handrail extension=299 mm | falls short
Vyhláška 146/2024 Sb., section 34: Section 34(5) (in force since 1 July 2024) | czech-windows-2024 | sill-too-low | place=window; drop=12 m; height=850 mm | meets
Vyhláška 146/2024 Sb., section 34: Section 34(5) (in force since 1 July 2024) | czech-windows-2024 | high-sill-too-low | place=window; drop=12.01 m; height=850 mm | falls short
Vyhláška 268/2009 Sb.: window sills (text to November 2021) | czech-windows-2009 | sill-too-low | place=window; drop=5 m; height=850 mm | meets
Vyhláška 137/1998 Sb., section 38: Section 38 (last state, end of 2006) | czech-1998 | child-place-gap-too-wide | place=landing; use=public; opening=80 mm | meets
Vyhláška 137/1998 Sb., section 38: Section 38 (last state, end of 2006) | czech-1998 | child-place-gap-too-wide | place=landing; use=public; opening=81 mm | not settled
Regulations on Standards for Housing Construction, article 18 (1) to (3), quoted word for: Article 18(1) (as quoted in 2026) | korea-housing | rail-too-low | place=balcony; height=1200 mm | meets
Regulations on Standards for Housing Construction, article 18 (1) to (3), quoted word for: Article 18(1) (as quoted in 2026) | korea-housing | gap-too-wide | place=balcony; opening=100 mm | meets
GB 55038-2025 4.1.15 and 4.1.16: 4.1.15 (2025) | china-homes-2025 | rail-too-low | place=balcony; height=1199 mm | falls short
GB 55038-2025 4.1.15 and 4.1.16: 4.1.16 (2025) | china-homes-2025 | window-can-be-fallen-from | place=window; sill top height=900 mm | meets
Newspaper report on the municipality's directive: directive (about 2013) | dubai-balconies-2013 | rail-too-low | place=balcony; height=900 mm | meets
Enforcement Order of the Building Standards Law, articles 25 and 126, as restated: Article 126 (as restated) | japan-balconies | rail-too-low | place=balcony; height=1100 mm | meets
National Construction Code 2019, volume two, P2.5.2: P2.5.2(a) (2019) | australia-ncc-2019 | no-guard | place=landing; drop=1000 mm; guard=none | falls short
Strata Schemes Management Regulation 2016, clause 30, and of 2010, clause 31: clause 30 (2013 and 2016) | new-south-wales-windows-2013 | window-can-be-fallen-from | place=window; sill height=1699 mm; drop=2000 mm; opening=124 mm | meets
Housing (Standards for Rented Houses) Regulations 2019, S.I. 137/2019, quoted word for: structural condition (2017 and 2019) | ireland-rented-2017 | window-can-be-fallen-from | place=window; sill above ground=1400 mm; opening=300 mm | does not apply
Housing (Standards for Rented Houses) Regulations 2019, S.I. 137/2019, quoted word for: structural condition (2017 and 2019) | ireland-rented-2017 | window-can-be-fallen-from | place=window; sill above ground=1401 mm; opening=100 mm | meets
N.J.A.C. 5:10-27.1 and N.J.S.A. 55:13A-7.12: 5:10-27.1 (as read in 2026) | new-jersey-windows | window-can-be-fallen-from | place=window; dwellings in building=12; children=6 years; opening=4 in | not settled
N.J.A.C. 5:10-27.1 and N.J.S.A. 55:13A-7.12: 55:13A-7.12 (as read in 2026) | new-jersey-windows | stop-is-no-guard | place=window; dwellings in building=12; children=6 years; opening=3 in; window stop=holds | not settled
N.J.A.C. 5:27-4.7: 5:27-4.7 (as read in 2026) | new-jersey-rooming-houses | no-guard-at-stair | place=stair; risers=2; guard=none | does not apply
";

#[test]
fn limits_fall_where_the_words_of_the_clauses_put_them() {
    judge(ROWS, None);
}
