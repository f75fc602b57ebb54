//! The countries and regions in which rulesets hold, as people name them.

/// What a name on the map means here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum OnTheMap {
    /// One country, or several that one name stands for.
    Countries(&'static [&'static str]),
    /// A part of a country.
    Region(&'static Region),
}

/// A part of a country whose rules may be its own.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Region {
    /// Its name, as rulesets write it.
    pub(super) name: &'static str,
    /// The country that it lies in, as rulesets write it.
    pub(super) country: &'static str,
    /// The region that it is a part of: a city's state.
    pub(super) within: Option<&'static str>,
    /// What else people call it.
    synonyms: &'static [&'static str],
}

struct Country {
    name: &'static str,
    synonyms: &'static [&'static str],
    continent: Continent,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Continent {
    Europe,
    Other,
}

/// What a name in lower case means; `None` for a name that is not here.
pub(super) fn on_the_map(name: &str) -> Option<OnTheMap> {
    let country = COUNTRIES
        .iter()
        .find(|country| is(name, country.name, country.synonyms))
        .map(|country| OnTheMap::Countries(std::slice::from_ref(&country.name)));
    let several = || {
        let found = SEVERAL.iter().find(|(said, _)| said.contains(&name));
        found.map(|(_, countries)| OnTheMap::Countries(countries))
    };
    let region = || {
        let found = REGIONS
            .iter()
            .find(|region| is(name, region.name, region.synonyms));
        found.map(OnTheMap::Region)
    };
    country.or_else(several).or_else(region)
}

/// The region that rulesets write so.
pub(super) fn region(name: &str) -> Option<&'static Region> {
    REGIONS.iter().find(|region| region.name == name)
}

/// Whether a country lies in Europe; some rulesets hold in all of it.
pub(super) fn in_europe(country: &str) -> bool {
    let mut countries = COUNTRIES.iter();
    countries.any(|known| known.name == country && known.continent == Continent::Europe)
}

/// What rulesets write that hold in all of Europe.
pub(super) const EUROPE: &str = "Europe";

/// What rulesets write that hold anywhere.
pub(super) const ANYWHERE: &str = "any country";

/// Every country's and region's name, for suggestions.
pub(super) fn names() -> impl Iterator<Item = &'static str> {
    let countries = COUNTRIES.iter().map(|country| country.name);
    countries.chain(REGIONS.iter().map(|region| region.name))
}

fn is(said: &str, name: &str, synonyms: &[&str]) -> bool {
    name.to_lowercase() == said || synonyms.contains(&said)
}

/// Names that stand for several countries, each with rules of its own.
const SEVERAL: &[(&[&str], &[&str])] = &[(
    &["uk", "u.k", "united kingdom", "great britain", "britain"],
    &["England", "Northern Ireland", "Scotland", "Wales"],
)];

const fn country(
    name: &'static str,
    continent: Continent,
    synonyms: &'static [&'static str],
) -> Country {
    Country {
        name,
        synonyms,
        continent,
    }
}

const COUNTRIES: &[Country] = &[
    country("Australia", Continent::Other, &[]),
    country(
        "Austria",
        Continent::Europe,
        &["österreich", "vienna", "wien"],
    ),
    country("Belgium", Continent::Europe, &["brussels", "antwerp"]),
    country(
        "Brazil",
        Continent::Other,
        &["brasil", "rio de janeiro", "são paulo", "sao paulo"],
    ),
    country("Canada", Continent::Other, &[]),
    country("China", Continent::Other, &["beijing", "shanghai"]),
    country(
        "Czech Republic",
        Continent::Europe,
        &["czechia", "prague", "praha"],
    ),
    country("Denmark", Continent::Europe, &["danmark", "copenhagen"]),
    country(
        "England",
        Continent::Europe,
        &["london", "manchester", "birmingham", "leeds", "bristol"],
    ),
    country("Estonia", Continent::Europe, &["tallinn"]),
    country("Finland", Continent::Europe, &["suomi", "helsinki"]),
    country("France", Continent::Europe, &["paris", "lyon", "marseille"]),
    country("Germany", Continent::Europe, &["deutschland"]),
    country("Greece", Continent::Europe, &["athens"]),
    country("Hong Kong", Continent::Other, &[]),
    country(
        "India",
        Continent::Other,
        &["mumbai", "delhi", "new delhi", "bangalore"],
    ),
    country(
        "Ireland",
        Continent::Europe,
        &["dublin", "republic of ireland"],
    ),
    country("Italy", Continent::Europe, &["italia", "rome", "milan"]),
    country("Japan", Continent::Other, &["tokyo", "osaka"]),
    country("Kenya", Continent::Other, &["nairobi"]),
    country("Korea", Continent::Other, &["south korea", "seoul"]),
    country("Mexico", Continent::Other, &["méxico", "mexico city"]),
    country(
        "Netherlands",
        Continent::Europe,
        &[
            "holland",
            "the netherlands",
            "nederland",
            "amsterdam",
            "rotterdam",
        ],
    ),
    country(
        "New Zealand",
        Continent::Other,
        &["nz", "auckland", "wellington", "christchurch"],
    ),
    country("Northern Ireland", Continent::Europe, &["belfast"]),
    country("Norway", Continent::Europe, &["norge", "oslo"]),
    country(
        "Poland",
        Continent::Europe,
        &["polska", "warsaw", "kraków", "krakow"],
    ),
    country("Portugal", Continent::Europe, &["lisbon", "porto"]),
    country("Scotland", Continent::Europe, &["glasgow", "edinburgh"]),
    country("Singapore", Continent::Other, &[]),
    country(
        "South Africa",
        Continent::Other,
        &["cape town", "johannesburg"],
    ),
    country(
        "Spain",
        Continent::Europe,
        &["españa", "madrid", "barcelona"],
    ),
    country("Sweden", Continent::Europe, &["sverige", "stockholm"]),
    country(
        "Switzerland",
        Continent::Europe,
        &["schweiz", "suisse", "geneva", "bern", "basel"],
    ),
    country(
        "United States",
        Continent::Other,
        &[
            "us",
            "usa",
            "u.s",
            "u.s.a",
            "america",
            "united states of america",
            "the states",
        ],
    ),
    country("Wales", Continent::Europe, &["cardiff"]),
    // of these no rules are here; a reader is told so
    country("Afghanistan", Continent::Other, &[]),
    country("Albania", Continent::Europe, &["tirana"]),
    country("Algeria", Continent::Other, &["algiers"]),
    country("Andorra", Continent::Europe, &[]),
    country("Angola", Continent::Other, &["luanda"]),
    country("Argentina", Continent::Other, &["buenos aires"]),
    country("Armenia", Continent::Other, &[]),
    country("Azerbaijan", Continent::Other, &["baku"]),
    country("Bahamas", Continent::Other, &["the bahamas"]),
    country("Bahrain", Continent::Other, &[]),
    country("Bangladesh", Continent::Other, &["dhaka"]),
    country("Barbados", Continent::Other, &[]),
    country("Belarus", Continent::Europe, &["minsk"]),
    country("Belize", Continent::Other, &[]),
    country("Benin", Continent::Other, &[]),
    country("Bhutan", Continent::Other, &[]),
    country("Bolivia", Continent::Other, &["la paz"]),
    country(
        "Bosnia and Herzegovina",
        Continent::Europe,
        &["bosnia", "sarajevo"],
    ),
    country("Botswana", Continent::Other, &[]),
    country("Brunei", Continent::Other, &[]),
    country("Bulgaria", Continent::Europe, &["sofia"]),
    country("Burkina Faso", Continent::Other, &[]),
    country("Cambodia", Continent::Other, &["phnom penh"]),
    country("Cameroon", Continent::Other, &[]),
    country("Chile", Continent::Other, &["santiago"]),
    country(
        "Colombia",
        Continent::Other,
        &["bogota", "bogotá", "medellin"],
    ),
    country("Congo", Continent::Other, &["dr congo", "kinshasa"]),
    country("Costa Rica", Continent::Other, &[]),
    country("Croatia", Continent::Europe, &["zagreb"]),
    country("Cuba", Continent::Other, &["havana"]),
    country("Cyprus", Continent::Europe, &["nicosia"]),
    country("Dominican Republic", Continent::Other, &[]),
    country("Ecuador", Continent::Other, &["quito"]),
    country("Egypt", Continent::Other, &["cairo"]),
    country("El Salvador", Continent::Other, &[]),
    country("Ethiopia", Continent::Other, &["addis ababa"]),
    country("Fiji", Continent::Other, &[]),
    country("Ghana", Continent::Other, &["accra"]),
    country("Guatemala", Continent::Other, &[]),
    country("Haiti", Continent::Other, &[]),
    country("Honduras", Continent::Other, &[]),
    country("Hungary", Continent::Europe, &["budapest"]),
    country("Iceland", Continent::Europe, &["reykjavik"]),
    country("Indonesia", Continent::Other, &["jakarta"]),
    country("Iran", Continent::Other, &["tehran"]),
    country("Iraq", Continent::Other, &["baghdad"]),
    country("Israel", Continent::Other, &["tel aviv", "jerusalem"]),
    country(
        "Ivory Coast",
        Continent::Other,
        &["côte d'ivoire", "abidjan"],
    ),
    country("Jamaica", Continent::Other, &[]),
    country("Jordan", Continent::Other, &["amman"]),
    country("Kazakhstan", Continent::Other, &[]),
    country("Kosovo", Continent::Europe, &[]),
    country("Kuwait", Continent::Other, &[]),
    country("Laos", Continent::Other, &[]),
    country("Latvia", Continent::Europe, &["riga"]),
    country("Lebanon", Continent::Other, &["beirut"]),
    country("Libya", Continent::Other, &[]),
    country("Liechtenstein", Continent::Europe, &[]),
    country("Lithuania", Continent::Europe, &["vilnius"]),
    country("Luxembourg", Continent::Europe, &[]),
    country("Madagascar", Continent::Other, &[]),
    country("Malawi", Continent::Other, &[]),
    country("Malaysia", Continent::Other, &["kuala lumpur"]),
    country("Maldives", Continent::Other, &[]),
    country("Malta", Continent::Europe, &[]),
    country("Mauritius", Continent::Other, &[]),
    country("Moldova", Continent::Europe, &[]),
    country("Monaco", Continent::Europe, &[]),
    country("Mongolia", Continent::Other, &[]),
    country("Montenegro", Continent::Europe, &[]),
    country("Morocco", Continent::Other, &["casablanca"]),
    country("Mozambique", Continent::Other, &[]),
    country("Myanmar", Continent::Other, &["burma", "yangon"]),
    country("Namibia", Continent::Other, &[]),
    country("Nepal", Continent::Other, &["kathmandu"]),
    country("Nicaragua", Continent::Other, &[]),
    country("Nigeria", Continent::Other, &["lagos", "abuja"]),
    country(
        "North Macedonia",
        Continent::Europe,
        &["macedonia", "skopje"],
    ),
    country("Oman", Continent::Other, &["muscat"]),
    country("Pakistan", Continent::Other, &["karachi", "lahore"]),
    country("Panama", Continent::Other, &[]),
    country("Papua New Guinea", Continent::Other, &[]),
    country("Paraguay", Continent::Other, &[]),
    country("Peru", Continent::Other, &["lima"]),
    country(
        "Philippines",
        Continent::Other,
        &["the philippines", "manila"],
    ),
    country("Qatar", Continent::Other, &["doha"]),
    country("Romania", Continent::Europe, &["bucharest"]),
    country(
        "Russia",
        Continent::Europe,
        &["moscow", "saint petersburg", "st petersburg"],
    ),
    country("Rwanda", Continent::Other, &["kigali"]),
    country("Saudi Arabia", Continent::Other, &["riyadh"]),
    country("Senegal", Continent::Other, &["dakar"]),
    country("Serbia", Continent::Europe, &["belgrade"]),
    country("Slovakia", Continent::Europe, &["bratislava"]),
    country("Slovenia", Continent::Europe, &["ljubljana"]),
    country("Somalia", Continent::Other, &[]),
    country("Sri Lanka", Continent::Other, &["colombo"]),
    country("Sudan", Continent::Other, &["khartoum"]),
    country("Syria", Continent::Other, &[]),
    country("Taiwan", Continent::Other, &["taipei"]),
    country("Tanzania", Continent::Other, &["dar es salaam"]),
    country("Thailand", Continent::Other, &["bangkok"]),
    country("Trinidad and Tobago", Continent::Other, &["trinidad"]),
    country("Tunisia", Continent::Other, &["tunis"]),
    country(
        "Turkey",
        Continent::Europe,
        &["türkiye", "istanbul", "ankara"],
    ),
    country("Uganda", Continent::Other, &["kampala"]),
    country("Ukraine", Continent::Europe, &["kyiv", "kiev"]),
    country(
        "United Arab Emirates",
        Continent::Other,
        &["uae", "emirates"],
    ),
    country("Uruguay", Continent::Other, &["montevideo"]),
    country("Uzbekistan", Continent::Other, &[]),
    country("Venezuela", Continent::Other, &["caracas"]),
    country(
        "Vietnam",
        Continent::Other,
        &["hanoi", "ho chi minh city", "saigon"],
    ),
    country("Yemen", Continent::Other, &[]),
    country("Zambia", Continent::Other, &["lusaka"]),
    country("Zimbabwe", Continent::Other, &["harare"]),
];

const fn state(name: &'static str, synonyms: &'static [&'static str]) -> Region {
    part("United States", name, synonyms)
}

const fn part(
    country: &'static str,
    name: &'static str,
    synonyms: &'static [&'static str],
) -> Region {
    Region {
        name,
        country,
        within: None,
        synonyms,
    }
}

const fn city(
    country: &'static str,
    within: &'static str,
    name: &'static str,
    synonyms: &'static [&'static str],
) -> Region {
    Region {
        name,
        country,
        within: Some(within),
        synonyms,
    }
}

const REGIONS: &[Region] = &[
    city("United States", "Illinois", "Chicago", &[]),
    city(
        "United States",
        "New York",
        "New York City",
        &[
            "nyc",
            "manhattan",
            "brooklyn",
            "queens",
            "bronx",
            "the bronx",
            "staten island",
        ],
    ),
    city("Canada", "Quebec", "Sainte-Adèle", &["sainte-adele"]),
    city("United States", "Ohio", "Wauseon", &[]),
    part("United Arab Emirates", "Dubai", &[]),
    part("Canada", "Alberta", &["calgary", "edmonton"]),
    part("Canada", "British Columbia", &["bc", "b.c", "vancouver"]),
    part("Canada", "Manitoba", &["winnipeg"]),
    part("Canada", "New Brunswick", &[]),
    part("Canada", "Newfoundland and Labrador", &["newfoundland"]),
    part("Canada", "Nova Scotia", &["halifax"]),
    part("Canada", "Ontario", &["toronto", "ottawa"]),
    part("Canada", "Prince Edward Island", &[]),
    part("Canada", "Quebec", &["québec", "montreal", "montréal"]),
    part("Canada", "Saskatchewan", &[]),
    part("Canada", "Yukon", &[]),
    part("Canada", "Northwest Territories", &[]),
    part("Canada", "Nunavut", &[]),
    part("Australia", "New South Wales", &["nsw", "sydney"]),
    part("Australia", "Queensland", &["qld", "brisbane"]),
    part("Australia", "South Australia", &["adelaide"]),
    part("Australia", "Tasmania", &["hobart"]),
    part("Australia", "Victoria", &["melbourne"]),
    part("Australia", "Western Australia", &["perth"]),
    part("Australia", "Northern Territory", &["darwin"]),
    part("Australia", "Australian Capital Territory", &["canberra"]),
    part(
        "Germany",
        "Baden-Württemberg",
        &["baden-wuerttemberg", "baden-wurttemberg", "stuttgart"],
    ),
    part("Germany", "Bavaria", &["bayern", "munich", "münchen"]),
    part("Germany", "Berlin", &[]),
    part("Germany", "Brandenburg", &["potsdam"]),
    part("Germany", "Bremen", &[]),
    part("Germany", "Hamburg", &[]),
    part("Germany", "Hesse", &["hessen", "frankfurt"]),
    part(
        "Germany",
        "Lower Saxony",
        &["niedersachsen", "hannover", "hanover"],
    ),
    part("Germany", "Mecklenburg-Vorpommern", &[]),
    part(
        "Germany",
        "North Rhine-Westphalia",
        &[
            "nordrhein-westfalen",
            "nrw",
            "cologne",
            "köln",
            "düsseldorf",
        ],
    ),
    part(
        "Germany",
        "Rhineland-Palatinate",
        &["rheinland-pfalz", "mainz"],
    ),
    part("Germany", "Saarland", &[]),
    part("Germany", "Saxony", &["sachsen", "dresden", "leipzig"]),
    part("Germany", "Saxony-Anhalt", &["sachsen-anhalt"]),
    part("Germany", "Schleswig-Holstein", &["kiel"]),
    part("Germany", "Thuringia", &["thüringen", "erfurt"]),
    part("India", "Kerala", &["kochi"]),
    part("Switzerland", "Zurich", &["zürich"]),
    state("Alabama", &[]),
    state("Alaska", &[]),
    state("Arizona", &["phoenix"]),
    state("Arkansas", &[]),
    state("California", &["los angeles", "san francisco", "san diego"]),
    state("Colorado", &["denver"]),
    state("Connecticut", &[]),
    state("Delaware", &[]),
    state(
        "District of Columbia",
        &["washington dc", "dc", "d.c", "washington d.c"],
    ),
    state("Florida", &["miami", "orlando", "tampa"]),
    state("Georgia", &["atlanta"]),
    state("Hawaii", &[]),
    state("Idaho", &[]),
    state("Illinois", &[]),
    state("Indiana", &["indianapolis"]),
    state("Iowa", &[]),
    state("Kansas", &[]),
    state("Kentucky", &[]),
    state("Louisiana", &["new orleans"]),
    state("Maine", &[]),
    state("Maryland", &["baltimore"]),
    state("Massachusetts", &["boston"]),
    state("Michigan", &["detroit"]),
    state("Minnesota", &["minneapolis"]),
    state("Mississippi", &[]),
    state("Missouri", &["kansas city", "st louis", "saint louis"]),
    state("Montana", &[]),
    state("Nebraska", &[]),
    state("Nevada", &["las vegas"]),
    state("New Hampshire", &[]),
    state("New Jersey", &["newark"]),
    state("New Mexico", &[]),
    state("New York", &["new york state", "buffalo", "albany"]),
    state("North Carolina", &["charlotte", "raleigh"]),
    state("North Dakota", &[]),
    state("Ohio", &["cincinnati", "cleveland", "columbus"]),
    state("Oklahoma", &[]),
    state("Oregon", &["portland"]),
    state("Pennsylvania", &["philadelphia", "pittsburgh"]),
    state("Rhode Island", &[]),
    state("South Carolina", &["charleston"]),
    state("South Dakota", &[]),
    state("Tennessee", &["nashville", "memphis"]),
    state("Texas", &["houston", "dallas", "austin", "san antonio"]),
    state("Utah", &["salt lake city"]),
    state("Vermont", &[]),
    state("Virginia", &[]),
    state("Washington", &["washington state", "seattle"]),
    state("West Virginia", &[]),
    state("Wisconsin", &["milwaukee"]),
    state("Wyoming", &[]),
];
