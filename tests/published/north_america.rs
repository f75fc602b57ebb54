//! Limits of the United States and Canada as their texts state them, each row with
//! title, clause and edition; what is given is exact. The verdicts we worked out by
//! hand from the words of the clause, apart from the code.

use super::judge;

/// source | ruleset | rule | readings | verdict of the reading alone.
const ROWS: &str = "
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=3 15/16 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=4 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=100 mm | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=101.8 mm | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2018 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 1/4 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2018 | stair-gap-too-wide | place=stair; drop=9 ft; opening=107.95 mm | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=landing; drop=9 ft; opening=4 1/4 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2018 | stair-gap-too-wide | place=stair; drop=9 ft; opening=111 mm | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2018 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 3/8 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 2 (2015, 2018 and 2021) | us-dwelling-2018 | stair-gap-too-wide | place=stair; drop=9 ft; opening=111.2 mm | falls short
An architect's article and the change history of the model codes, which quote R316: R316.2 (2000) | us-dwelling-2000 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 1/4 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 1 (2015, 2018 and 2021) | us-dwelling-2018 | step-triangle-too-wide | place=stair; drop=9 ft; stair triangle=rise 7 3/4 going 10 lift 0 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 1 (2015, 2018 and 2021) | us-dwelling-2018 | step-triangle-too-wide | place=stair; drop=9 ft; stair triangle=rise 7.75 going 10 lift 1.2652 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3, exception 1 (2015, 2018 and 2021) | us-dwelling-2018 | step-triangle-too-wide | place=stair; drop=9 ft; stair triangle=rise 7.75 going 10 lift 1.5814 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2018 | rail-too-low | place=landing; drop=9 ft; height=36 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2018 | rail-too-low | place=landing; drop=9 ft; height=35 15/16 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2018 | rail-too-low | place=landing; drop=9 ft; height=914 mm | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2, exception 1 (2015, 2018 and 2021) | us-dwelling-2018 | stair-rail-too-low | place=stair; drop=9 ft; handrail=separate; height=34 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.2, exception 1 (2015, 2018 and 2021) | us-dwelling-2018 | stair-rail-too-low | place=stair; drop=9 ft; handrail=top of the guard; height=39 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.2, exception 2, and R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2018 | guard-top-as-handrail | place=stair; drop=9 ft; handrail=top of the guard; height=39 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2018 | no-guard | place=deck; drop=30 in; guard=none | does not apply
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2018 | no-guard | place=deck; drop=30 1/16 in; guard=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2018 | no-guard | place=deck; drop=28 in; drop=31 in; guard=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.1 (2015, 2018 and 2021) | us-dwelling-2018 | no-guard | place=deck; drop=28 in; guard=none | does not apply
International Residential Code R301.5, R311.7 and R312: R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2018 | handrail-height | place=stair; handrail=separate; handrail height=34 in | meets
International Residential Code R301.5, R311.7 and R312: R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2018 | handrail-height | place=stair; handrail=separate; handrail height=38 in | meets
International Residential Code R301.5, R311.7 and R312: R311.7.8 (2015, 2018 and 2021) | us-dwelling-2018 | handrail-missing | place=stair; risers=3; handrail=none | does not apply
International Residential Code R301.5, R311.7 and R312: R311.7.8 (2015, 2018 and 2021) | us-dwelling-2018 | handrail-missing | place=stair; risers=4; handrail=none | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=5 in at 36 1/2 in to 41 1/2 in; opening=3 in at 6 in to 30 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=5 in at 36 1/2 in to 41 1/2 in | not measured
An architect's article and the change history of the model codes, which quote R316: R316.2 (2000) | us-dwelling-2000 | climbable-infill | place=deck; drop=3.9 m; infill=cables | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=3 3/4 in | meets
Caring for Our Children, national standards for child care in the US: 5.1.5.1, 5.1.5.4: Caring for Our Children 5.1.6.6 (as published online) | small-child-advice | gap-too-wide | children=2 years; opening=3 3/4 in | falls short
Public Playground Safety Handbook, publication 325 of the US Consumer Product Safety: CPSC Pub. 325, B.2.5.1 (2010, reprinted 2015) | small-child-advice | gap-can-hold-a-head | opening=3 3/4 in | falls short
Caring for Our Children, national standards for child care in the US: 5.1.5.1, 5.1.5.4: Caring for Our Children 5.1.6.6 (as published online) | small-child-advice | gap-too-wide | children=2 years; opening=3 1/2 in | falls short
Caring for Our Children, national standards for child care in the US: 5.1.5.1, 5.1.5.4: Caring for Our Children 5.1.5.1 (as published online) | small-child-advice | gap-too-wide-for-infant | children=12 months; opening=2 3/8 in | falls short
Caring for Our Children, national standards for child care in the US: 5.1.5.1, 5.1.5.4: Caring for Our Children 5.1.5.1 (as published online) | small-child-advice | gap-too-wide-for-infant | children=12 months; opening=60 mm | meets
Public Playground Safety Handbook, publication 325 of the US Consumer Product Safety: CPSC Pub. 325, B.2.5.1 (2010, reprinted 2015) | small-child-advice | gap-can-hold-a-head | opening=8.9 in | falls short
Public Playground Safety Handbook, publication 325 of the US Consumer Product Safety: CPSC Pub. 325, B.2.5.1 (2010, reprinted 2015) | small-child-advice | gap-can-hold-a-head | opening=9 in | meets
International Residential Code R301.5, R311.7 and R312: R311.7.5.1 (2015, 2018 and 2021) | us-dwelling-2018 | open-riser-too-wide | place=stair; drop=31 in; riser opening=4 in | falls short
International Residential Code R301.5, R311.7 and R312: R311.7.5.1 (2015, 2018 and 2021) | us-dwelling-2018 | open-riser-too-wide | place=stair; drop=29 in; riser opening=4 in | does not apply
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=3.5 in | meets
International Residential Code R301.5, R311.7 and R312: R312.1.3 (2015, 2018 and 2021) | us-dwelling-2018 | gap-too-wide | place=deck; drop=9 ft; opening=4.25 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.5.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | gap-too-wide | place=deck; drop=2.4 m; opening=3 15/16 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.5.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | gap-too-wide | place=deck; drop=2.4 m; opening=100 mm | falls short
Ontario Building Code, O. Reg. 332/12: 3.3.1.17.(2) (consolidated text of February 2025) | ontario-2012 | public-gap-too-wide | place=landing; use=public; drop=2.4 m; opening=100 mm | meets
Change history 2000 to 2005 of the model codes: no wider opening on stairs in the 2000: R312 (2005) | us-dwelling-2003 | stair-gap-too-wide | place=stair; drop=9 ft; opening=4 1/4 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.5.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | step-triangle-too-wide | place=stair; drop=9 ft; stair triangle=rise 7 3/4 going 10 lift 0 in | meets
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=41 7/8 in | falls short
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=42 in | meets
California Residential Code R321.1.2: R321.1.2 (2025) | california-dwelling | rail-too-low | place=deck; drop=9 ft; height=1067 mm | meets
Ontario Building Code, O. Reg. 332/12: 9.8.8.3.(1) (consolidated text of February 2025) | ontario-2012 | outside-rail-too-low | place=deck; use=dwelling; drop=1.9 m; height=42 in | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.3.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | rail-too-low | place=landing; location=inside; drop=9 ft; height=35 3/8 in; shared=no | falls short
National Building Code, 2023 Alberta Edition: 9.8.8.3.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | rail-too-low | place=landing; location=inside; drop=9 ft; height=35 7/16 in; shared=no | meets
National Building Code, 2023 Alberta Edition: 9.8.8.3.(2) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | rail-too-low | place=landing; location=inside; drop=9 ft; height=36 in; shared=no | meets
National Building Code, 2023 Alberta Edition: 9.8.8.1.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | no-guard | place=deck; drop=24 in; guard=none | falls short
British Columbia Building Code 9.8.8.1.(1) and 9.8.8.6: 9.8.8.1.(1)(b) (2018) | british-columbia-2018 | no-guard-above-slope | place=deck; drop=600 mm; ground fall=556 mm; guard=none | falls short
29 CFR 1910.28(b)(1)(i): 1910.28(b)(1) (from 17 January 2017) | us-workplace | no-guard | place=deck; drop=31 in; guard=none | does not apply
29 CFR 1910.28(b)(1)(i): 1910.28(b)(1) (from 17 January 2017) | us-workplace | no-guard | place=deck; drop=4 ft; guard=none | falls short
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.4 (2010) | us-accessible-handrails-2010 | handrail-height | place=stair; handrail=separate; handrail height=34 in | meets
Guidance pages of Ontario and New Brunswick, and statements of the national code's: 9.8.7.4 (2005 to 2022) | british-columbia-2018 | handrail-height | place=stair; drop=500 mm; handrail=separate; handrail height=34 in | falls short
Guidance pages of Ontario and New Brunswick, and statements of the national code's: 9.8.7.4 (2005 to 2022) | british-columbia-2018 | handrail-height | place=stair; drop=500 mm; handrail=separate; handrail height=38 in | falls short
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: R320.6 (2024) | us-dwelling-2024 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=2 in | meets
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: R320.6 (2024) | us-dwelling-2024 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=2 1/16 in | falls short
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: R320.6 (2024) | us-dwelling-2024 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=32 mm | meets
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.7.1 (2010) | us-accessible-handrails-2010 | round-handrail-grip | place=stair; handrail=separate; handrail shape=round; handrail thickness=31.5 mm | falls short
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: R320.6 (2024) | us-dwelling-2024 | handrail-grip | place=stair; handrail=separate; handrail shape=other; handrail perimeter=160 mm | falls short
A framing page that quotes R312.2.1 in full: R312.2.1 (2012) | us-windows-2012 | window-can-be-fallen-from | place=window; sill height=23 in; sill above ground=73 in; opening=5 in | falls short
A framing page that quotes R312.2.1 in full: R312.2.1 (2012) | us-windows-2012 | window-can-be-fallen-from | place=window; sill height=23 in; sill above ground=72 in; opening=5 in | does not apply
A framing page that quotes R312.2.1 in full: R312.2.1 (2012) | us-windows-2012 | window-can-be-fallen-from | place=window; sill height=24 in; sill above ground=73 in; opening=5 in | meets
A framing page that quotes R312.2.1 in full: R312.2.1 (2012) | us-windows-2012 | window-can-be-fallen-from | place=window; sill height=23 in; sill above ground=73 in; opening=3 7/8 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.8 (2015, 2021 and 2024) | us-buildings-2021 | window-can-be-fallen-from | place=window; use=dwelling; sill height=30 in; sill above ground=80 in; opening=5 in | falls short
A framing page that quotes R312.2.1 in full: R312.2.1 (2012) | us-windows-2012 | window-can-be-fallen-from | place=window; sill height=30 in; sill above ground=80 in; opening=5 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.4, exception 1 (2015, 2021 and 2024) | us-buildings-2018 | upper-gap-too-wide | place=landing; use=public; shared=yes; drop=9 ft; opening=4 1/4 in at 38 in | meets
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1015.4 (2015, 2021 and 2024) | us-buildings-2018 | gap-too-wide | place=landing; use=public; shared=yes; drop=9 ft; opening=4 1/4 in at 30 in | falls short
Significant change to R312.1.2 in the 2015 edition, which tells what the editions of 2009: R312.2 (2015) | us-dwelling-2009 | rail-too-low-above-seat | place=deck; drop=9 ft; fixed seat=yes; height above seat=24 in; height=42 in | falls short
Significant change to R312.1.2 in the 2015 edition, which tells what the editions of 2009: R312.1.2 (2015) | us-dwelling-2012 | rail-too-low-above-seat | place=deck; drop=9 ft; fixed seat=yes; height above seat=24 in; height=42 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2 (2015, 2018 and 2021) | us-dwelling-2015 | rail-too-low | place=deck; drop=9 ft; fixed seat=yes; height above seat=24 in; height=42 in | meets
National Building Code, 2023 Alberta Edition: 9.8.8.6.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | climbable-infill | place=deck; drop=3.9 m; infill=cables | does not apply
Ontario Building Code, O. Reg. 332/12: 9.8.8.6, 3.3.1.17 (consolidated text of February 2025) | ontario-2012 | climbable-infill | place=deck; use=dwelling; drop=3.9 m; infill=cables | not settled
National Building Code, 2023 Alberta Edition: 9.8.8.6.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | climbable-infill | place=deck; drop=4.3 m; infill=cables | not settled
British Columbia Building Code 9.8.8.6: 9.8.8.6.(1), and (2) as British Columbia printed it (2006 to 2018) | canada-dwelling | foothold-in-reach | place=deck; drop=4.3 m; foothold=500 mm high 15 mm deep | meets
British Columbia Building Code 9.8.8.6: 9.8.8.6.(1), and (2) as British Columbia printed it (2006 to 2018) | canada-dwelling | foothold-in-reach | place=deck; drop=4.3 m; foothold=500 mm high 16 mm deep | falls short
British Columbia Building Code 9.8.8.6: 9.8.8.6.(1), and (2) as British Columbia printed it (2006 to 2018) | canada-dwelling | foothold-in-reach | place=deck; drop=4.3 m; foothold=200 mm high 16 mm deep 100 mm along; foothold=650 mm high 16 mm deep 550 mm along | falls short
British Columbia Building Code 9.8.8.6: 9.8.8.6.(1), and (2) as British Columbia printed it (2006 to 2018) | canada-dwelling | foothold-in-reach | place=deck; drop=4.3 m; foothold=200 mm high 16 mm deep 100 mm along; foothold=651 mm high 16 mm deep 551 mm along | meets
16 CFR 1508.4(a): 1508.4(a) (before 2011) | us-crib-slats | gap-too-wide | opening=60.2 mm | falls short
Caring for Our Children, national standards for child care in the US: 5.1.5.1, 5.1.5.4: Caring for Our Children 5.1.5.1 (as published online) | small-child-advice | gap-too-wide-for-infant | children=12 months; opening=60.2 mm | meets
29 CFR 1910.29(b) and (f): 1910.29(b)(1) (from 17 January 2017) | us-workplace | rail-too-low | place=deck; drop=9 ft; height=39 in | meets
29 CFR 1910.29(b) and (f): 1910.29(b)(1) (from 17 January 2017) | us-workplace | rail-too-low | place=deck; drop=9 ft; height=38 7/8 in | falls short
29 CFR 1910.29(b) and (f): 1910.29(b)(1) (from 17 January 2017) | us-workplace | rail-too-low | place=deck; drop=9 ft; height=46 in | meets
29 CFR 1910.29(b) and (f): 1910.29(b)(2) (from 17 January 2017) | us-workplace | gap-too-wide | place=deck; drop=9 ft; infill=balusters; opening=19 in | meets
29 CFR 1910.29(b) and (f): 1910.29(b)(2) (from 17 January 2017) | us-workplace | gap-too-wide | place=deck; drop=9 ft; infill=balusters; opening=19 1/4 in | falls short
29 CFR 1910.29(b) and (f): 1910.29(f)(1)(ii) (from 17 January 2017) | us-workplace | old-stair-rail-too-low | place=stair; risers=13; built=2015; height=38 in | meets
29 CFR 1910.29(b) and (f): 1910.29(f)(1)(ii)(B) (from 17 January 2017) | us-workplace | stair-rail-too-low | place=stair; risers=13; built=2018; height=38 in | falls short
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(D) (text to 25 October 2024) | massachusetts-rental-2024 | gap-too-wide | place=porch; drop=9 ft; built=1960; infill=balusters; opening=5 3/4 in | meets
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(D) (text to 25 October 2024) | massachusetts-rental-2024 | new-gap-too-wide | place=porch; drop=9 ft; built=2000; opening=4 1/2 in | meets
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | rail-too-low | place=porch; drop=9 ft; height=30 in | meets
International Property Maintenance Code 306.1 (307.1 in later prints): 306.1, later 307.1 (as published by the cities) | us-rental-upkeep | rail-too-low | place=porch; drop=9 ft; height=29 1/2 in | falls short
Safety Barrier Guidelines for Residential Pools, publication 362: Publication 362, barriers (reprint) | us-pool-barriers | ledges-make-a-ladder | place=pool; foothold=2 in high; foothold=46 in high | not settled
Safety Barrier Guidelines for Residential Pools, publication 362: Publication 362, barriers (reprint) | us-pool-barriers | gap-beside-level-bars-too-wide | place=pool; level bar spacing=44 in; opening=3 in | falls short
International Residential Code R301.5, R311.7 and R312: R312.1.2, exception 2, and R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2018 | guard-top-as-handrail | place=stair; drop=28 in; handrail=top of the guard; height=39 in | falls short
International Residential Code, 2000 edition: not read, carried back from the 2018 edition: R315, carried back (2000) | us-dwelling-2000 | guard-top-as-handrail | place=stair; drop=9 ft; handrail=top of the guard; height=39 in | falls short
International Residential Code R301.5, R311.7 and R312: R311.7.8.1 (2015, 2018 and 2021) | us-dwelling-2018 | handrail-height | place=ramp; handrail=separate; handrail height=38 in | meets
International Residential Code R301.5, R318.7, R320 and R321, model text as the federal: table R301.5 (2024) | us-dwelling-2024 | guard-load | place=landing; post fastening=nails | falls short
International Building Code 1011.11, 1014, 1015.2 to 1015.8 and 1607: 1014.2 and 1015.3 (2015, 2021 and 2024) | us-buildings-2018 | guard-top-as-handrail | place=stair; handrail=top of the guard; height=42 in | falls short
International Building Code, 2000 edition: clauses not read, carried back from later: 1003.2.12, carried back (2000) | us-buildings-2000 | rail-too-low | place=balcony; use=dwelling; shared=no; drop=9 ft; height=36 in | falls short
29 CFR 1910.28: 1910.28(b)(11) (from 17 January 2017) | us-workplace | no-stair-rail | place=stair; risers=4; guard=none | falls short
29 CFR 1910.29(b) and (f): 1910.29(f)(1)(i) (from 17 January 2017) | us-workplace | new-guard-top-as-handrail | place=stair; built=2018; handrail=top of the guard; height=42 in | falls short
Public Playground Safety Handbook, publication 325, table 4 and B.2.5: Table 4 (2010, reprinted 2015) | us-playground-handbook-2010 | no-guardrail-for-preschool | place=deck; children=4 years; drop=20 1/16 in; guard=none | falls short
Public Playground Safety Handbook, publication 325, table 4 and B.2.5: Table 4 (2010, reprinted 2015) | us-playground-handbook-2010 | no-guardrail-for-preschool | place=deck; children=4 years; drop=20 in; guard=none | does not apply
Public Playground Safety Handbook, publication 325, table 4 and B.2.5: Table 4 (2010, reprinted 2015) | us-playground-handbook-2010 | gap-under-guardrail-for-preschool | place=deck; children=4 years; drop=25 in; bottom gap=23 in | meets
Table 4 of publication 325, figures for older children as restated elsewhere: Table 4 (2010) | us-playground-handbook-2010 | gap-too-wide-for-school-age | place=deck; children=8 years; drop=49 in; opening=3 1/2 in; bottom gap=none | falls short
Public Playground Safety Handbook, publication 325, table 4 and B.2.5: 5.2.3.1 (2010, reprinted 2015) | us-playground-handbook-2010 | handrail-height-for-preschool | place=stair; children=4 years; handrail=separate; handrail height=26 in | meets
Public Playground Safety Handbook, publication 325, table 4 and B.2.5: 5.2.2 (2010, reprinted 2015) | us-playground-handbook-2010 | handrail-grip-for-toddler | place=stair; children=18 months; handrail=separate; handrail shape=round; handrail thickness=1.20 in | meets
Safety Barrier Guidelines for Residential Pools, publication 362, extracts elsewhere: Publication 362, chain link (reprint) | us-pool-barriers | chain-link-too-wide | place=pool; infill=mesh; opening=1 1/2 in | not settled
National Building Code, 2023 Alberta Edition: 9.8.8.3.(1) (2023, the national code of 2020 as Alberta enacted it) | canada-dwelling | shared-rail-too-low | place=landing; location=inside; shared=yes; drop=9 ft; height=1000 mm; dwellings in building=6 | falls short
Ontario Building Code, O. Reg. 332/12: 3.3.1.17 (consolidated text of February 2025) | ontario-2012 | public-rail-too-low | place=landing; use=public; drop=9 ft; height=1000 mm | falls short
Ontario Building Code, O. Reg. 332/12: 9.8.8.6, 3.3.1.17 (consolidated text of February 2025) | ontario-2012 | climbable-infill | place=landing; use=public; drop=3.9 m; infill=cables | not settled
Ontario Building Code, O. Reg. 332/12: table 9.8.8.2 (consolidated text of February 2025) | ontario-2012 | guard-load-others | place=landing; use=dwelling; shared=yes; dwellings in building=6; post fastening=nails | falls short
Guidance pages of Ontario and New Brunswick, and statements of the national code's: 9.8.7.4 (2005 to 2022) | british-columbia-2018 | low-guard-top-as-handrail | place=stair; drop=500 mm; handrail=top of the guard; height=38 in | falls short
Transcription of BC 1015.3, 1015.4 and of the text on handrails: 1015.3 (as transcribed) | new-york-city | rail-too-low-above-seat | place=balcony; use=dwelling; shared=yes; drop=9 ft; fixed seat=yes; height above seat=36 in | falls short
Municipal Code of Chicago 13-124-330, 13-124-335 and 13-52-100, archived: 13-124-330 (before 2019) | chicago-older-text | rail-too-low | place=balcony; use=dwelling; shared=no; height=41 15/16 in | falls short
105 CMR 410.503, State Sanitary Code, minimum standards of fitness for human habitation: 410.503(D) (text to 25 October 2024) | massachusetts-rental-2024 | new-gap-too-wide | place=porch; drop=9 ft; built=2000; opening=4 9/16 in; bottom gap=none | falls short
29 CFR 1910.29(b) and (f): 1910.29(f)(2) (from 17 January 2017) | us-workplace | handrail-too-close-to-wall | place=stair; handrail=separate; handrail clearance=2 1/4 in | meets
2010 ADA Standards for Accessible Design, 505.2 to 505.10: 505.5 (2010) | us-accessible-handrails-2010 | handrail-too-close-to-wall | place=stair; handrail=separate; handrail clearance=1 7/16 in | falls short
Ontario Building Code, O. Reg. 332/12: 9.8.7.5 (consolidated text of February 2025) | ontario-2012 | handrail-too-close-to-wall | place=stair; handrail=separate; handrail clearance=49 mm | falls short
";

#[test]
fn limits_of_north_american_texts_fall_where_the_texts_put_them() {
    judge(ROWS, None);
}
