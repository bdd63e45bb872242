using System.Text.Json.Nodes;

namespace CapPrep.Service.Docs;

/// <summary>Examples that follow from others, so that no two of them can differ.</summary>
internal static class DerivedExamples
{
    private const string Cursor = "NzQxNjVhYjMgNTA";

    private static readonly string[] Resources = ["cap-style", "cap-frame", "machine", "framing-station", "rule-book"];

    /// <summary>What the service gives back of each resource, and lists of them.</summary>
    public static IEnumerable<(string Name, JsonNode Value)> OfTheCatalog(IReadOnlyDictionary<string, JsonNode> files)
    {
        foreach (var name in Resources)
        {
            yield return ($"stored-{name}", Stored(files[name], "id"));
            yield return ($"list-of-{name}s", Page(Stored(files[name], "id")));
        }

        yield return ("stored-shop", Stored(files["shop"], "shop"));
        yield return ("versions", Page(
            new JsonObject { ["version"] = 3, ["sha256"] = Sha, ["by"] = "from-settings", ["at"] = At, ["retired"] = false }));
    }

    /// <summary>The other forms of a job, and the events of its end.</summary>
    public static IEnumerable<(string Name, JsonNode Value)> OfJobs(IReadOnlyDictionary<string, JsonNode> files)
    {
        var job = files["job"];
        var failed = Failed(job);
        yield return ("job-parts", Parts(files["ticket"]));
        yield return ("job-parts-full", Parts(files["ticket-full"]));
        yield return ("job-queued", Queued(job));
        yield return ("job-failed", failed);
        yield return ("job-list", Page(Without(job, "ticket", "decisions"), more: true));
        var finished = Event("evt_0193f0c2ba327c11b0a2d4f6e8091a2b", "job.finished", job);
        yield return ("event-job-finished", finished);
        yield return ("event-job-failed", Event("evt_0193f0c2ba327c11b0a2d4f6e8091a2e", "job.failed", failed));
        yield return ("event-job-decided", Decided(job, files["decision"]));
        yield return ("event-feed", new JsonObject
        {
            ["items"] = new JsonArray(finished.DeepClone()),
            ["after"] = "evt_0193f0c2ba327c11b0a2d4f6e8091a2b",
            ["more"] = false,
        });
    }

    /// <summary>Endpoints and keys at the moment they are made, and lists of them.</summary>
    public static IEnumerable<(string Name, JsonNode Value)> OfAccess(IReadOnlyDictionary<string, JsonNode> files)
    {
        yield return ("webhook-new", With(Without(files["webhook"], "failingSince", "switchOffAt"), ("state", "on"), ("secret", "whsec_xbtUkQyP8v1m0aLJnVq3hT7sWdYcR5eG2iKoZfBu4Nk=")));
        yield return ("webhook-list", Page(files["webhook"]));
        yield return ("delivery-new", New(files["delivery"]));
        yield return ("delivery-list", Page(files["delivery"], more: true));
        yield return ("key-new", With(Without(files["key"], "lastUsed"), ("key", "cpk_7h2k9xq4_Zr0Vb3mWl5Qy8tKc2Xn6Hd9Pf1Gs4Ju7Ae0Io3Rb5TvYw81kQe")));
        yield return ("key-list", Page(files["key"]));
    }

    public static JsonObject Page(JsonNode item, bool more = false)
    {
        var page = new JsonObject { ["items"] = new JsonArray(item.DeepClone()) };
        if (more)
            page["cursor"] = Cursor;
        page["more"] = more;
        return page;
    }

    private const string At = "2026-11-25T08:00:00.000Z";
    private const string Sha = "5e1f0c2b7a47d0e9a51c3e8f2b6d71493efb1c0de7a338f1f6f0a97c2be05d2a";

    private static JsonObject Stored(JsonNode body, string idMember)
    {
        var stored = new JsonObject { [idMember] = body[idMember]!.DeepClone(), ["version"] = 3 };
        foreach (var (name, value) in body.AsObject().Where(member => member.Key != idMember))
            stored[name] = value!.DeepClone();
        stored["by"] = "from-settings";
        stored["at"] = At;
        stored["retired"] = false;
        return stored;
    }

    private static JsonObject Parts(JsonNode ticket) => new()
    {
        ["ticket"] = ticket.DeepClone(),
        ["tape"] = "(the bytes of the file)",
    };

    private static JsonObject Queued(JsonNode job)
    {
        var queued = With(
            Without(job, "verdict", "verdictReasons", "actors", "findings", "started", "finished", "tapeToSew"),
            ("status", "queued"), ("changed", job["received"]!.GetValue<string>()));
        queued["attempts"] = 0;
        queued["decisions"] = new JsonArray();
        queued["deliveries"] = new JsonObject { ["owed"] = 0, ["delivered"] = 0, ["givenUp"] = 0 };
        queued["links"] = Without(job["links"]!, "result", "card", "proof", "tape");
        return queued;
    }

    private static JsonObject Failed(JsonNode job)
    {
        var failed = With(
            Without(job, "verdict", "verdictReasons", "actors", "findings", "finished", "tapeToSew"), ("status", "failed"));
        failed["failure"] = new JsonObject
        {
            ["code"] = "engine-fault",
            ["errorId"] = "4bf92f3577b34da6a3ce929d0e0e4736",
            ["message"] = "CapPrep could not finish this job. The tape and the ticket are kept; ask for a recheck after an update.",
            ["attempts"] = 1,
        };
        failed["links"] = Without(job["links"]!, "result", "card", "proof", "tape");
        return failed;
    }

    private static JsonObject Decided(JsonNode job, JsonNode decision)
    {
        var data = new JsonObject();
        foreach (var name in new[] { "id", "number", "verdict", "orderNumber", "line", "location", "customer", "design", "revision" })
            data[name] = job[name]!.DeepClone();
        data["decision"] = decision.DeepClone();
        data["echo"] = job["echo"]!.DeepClone();
        data["links"] = new JsonObject { ["self"] = job["links"]!["self"]!.DeepClone(), ["result"] = job["links"]!["result"]!.DeepClone() };
        var happened = Event("evt_0193f0d4a1b37e44b5c6d7e8f9010213", "job.decided", job);
        happened["timestamp"] = decision["at"]!.DeepClone();
        happened["data"] = data;
        return happened;
    }

    private static JsonObject New(JsonNode delivery)
    {
        var made = delivery.DeepClone().AsObject();
        made["attempts"] = new JsonArray();
        return made;
    }

    private static JsonObject Event(string id, string type, JsonNode job) => new()
    {
        ["id"] = id,
        ["type"] = type,
        ["timestamp"] = job["changed"]!.DeepClone(),
        ["shop"] = "main",
        ["sequence"] = 1873,
        ["previousId"] = "evt_0193f0be11f07e52a1c3e5d7f9081b2c",
        ["data"] = Without(job, "ticket", "deliveries", "attempts", "decisions"),
    };

    private static JsonObject With(JsonObject value, params (string Name, string Text)[] members)
    {
        foreach (var (name, text) in members)
            value[name] = text;
        return value;
    }

    private static JsonObject Without(JsonNode value, params string[] names)
    {
        var rest = value.DeepClone().AsObject();
        foreach (var name in names)
            rest.Remove(name);
        return rest;
    }
}
