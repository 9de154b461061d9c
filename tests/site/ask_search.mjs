// Ranks questions as the page does: node ask_search.mjs SITE < questions.json > locations.json
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { resolve } from "node:path";

const site = resolve(process.argv[2]);
const load = (name) => import(pathToFileURL(`${site}/assets/benchrule/${name}`));
const { makeRanking, readPlaces } = await load("ranking.mjs");
const { default: MiniSearch } = await load("minisearch.mjs");
const { stemmer } = await load("stemmer.mjs");
const { docs } = JSON.parse(readFileSync(`${site}/search/search_index.json`, "utf8"));
const places = readPlaces(JSON.parse(readFileSync(`${site}/${docs[0].location}`, "utf8")));
const rank = makeRanking(MiniSearch, stemmer, places);
const questions = JSON.parse(readFileSync(0, "utf8"));
const answers = questions.map((question) => rank(question).slice(0, 10).map(({ doc }) => doc.location));
process.stdout.write(JSON.stringify(answers));
