// Where the page has its shelf from: the server that shows it, or the file that the page itself is.

const listeners = new Map();

/** Call back with the data of each event of a name. */
export function on(event, call) {
  listeners.set(event, [...(listeners.get(event) ?? []), call]);
}

/** Tell all who listen to an event. */
export function tell(event, data) {
  for (const call of listeners.get(event) ?? []) call(data);
}

/** What was refused, with the problems that say why. */
export class Refused extends Error {
  constructor(problems) {
    super(problems.map((one) => (one.remedy ? `${one.message}; ${one.remedy}` : one.message)).join("\n"));
    this.problems = problems;
  }
}

const TOO_LARGE = 413;
const GONE = [{ message: "bookmaker is no longer running", remedy: "start it again with: bookmaker show" }];

/** Everything asked of the server that shows the shelf. */
const server = {
  live: true,
  picture: (name) => `picture/${name}`,
  async state() {
    const answer = await fetch("state");
    if (answer.status === 204) return null;
    return { version: Number(answer.headers.get("version")), journal: JSON.parse(answer.headers.get("journal")), ...(await answer.json()) };
  },
  get: (path) => answered(fetch(path)),
  post(path, value) {
    const raw = value instanceof ArrayBuffer;
    const kind = raw ? "application/octet-stream" : "application/json";
    const body = raw ? value : JSON.stringify(value);
    return answered(fetch(path, { method: "POST", headers: { "content-type": kind }, body }));
  },
  listen() {
    const news = new EventSource("news");
    for (const event of ["state", "progress", "restart", "journal"]) {
      news.addEventListener(event, (heard) => tell(event, JSON.parse(heard.data)));
    }
    news.addEventListener("open", () => tell("connected", true));
    news.addEventListener("error", () => tell("connected", false));
  },
};

async function answered(asked) {
  let answer;
  try {
    answer = await asked;
  } catch {
    throw new Refused(GONE);
  }
  if (answer.status === 409) throw new Refused((await answer.json()).problems);
  if (answer.status === TOO_LARGE) throw new Refused([{ message: "this is larger than 6 MB", remedy: "send less of it" }]);
  if (!answer.ok) throw new Refused([{ message: `this was not answered (${answer.status})`, remedy: "try it once more" }]);
  return answer.headers.get("content-type")?.startsWith("application/json") ? answer.json() : null;
}

/** The shelf that stands in this very file. */
function kept(data) {
  const addresses = new Map();
  return {
    live: false,
    picture(name) {
      if (!addresses.has(name)) {
        const blob = new Blob([data.pictures[name] ?? ""], { type: "image/svg+xml" });
        addresses.set(name, URL.createObjectURL(blob));
      }
      return addresses.get(name);
    },
    state: async () => ({ version: 1, ...data.state }),
    async get(path) {
      const found = data.answers[path];
      if (!found) throw new Refused([{ message: "this is not in the file", remedy: "" }]);
      return found;
    },
    post: async () => {
      throw new Refused([{ message: "this page is only to look at", remedy: "" }]);
    },
    listen() {},
  };
}

async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(plain).json();
}

/** Who is asked. */
export async function source() {
  const here = document.getElementById("kept");
  return here ? kept(await unpacked(here.textContent)) : server;
}
