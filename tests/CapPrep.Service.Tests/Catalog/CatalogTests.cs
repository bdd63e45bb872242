using System.Buffers.Text;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Service.Storage;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Catalog;

public sealed class CatalogTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Theory]
    [InlineData("cap-styles", 8)]
    [InlineData("cap-frames", 3)]
    [InlineData("machines", 3)]
    [InlineData("framing-stations", 2)]
    [InlineData("rule-books", 1)]
    public async Task A_shop_begins_with_the_starter_catalog(string kind, int count)
    {
        var client = await Shop($"starter-{kind}");

        var list = await client.Get($"/v1/{kind}");

        list["items"].GetArrayLength().ShouldBe(count);
        list["more"].GetBoolean().ShouldBeFalse();
        list["items"].EnumerateArray().ShouldAllBe(item => item.GetProperty("by").GetString() == "starter");
    }

    [Fact]
    public async Task A_resource_is_made_changed_and_read_at_each_version()
    {
        var client = await Shop("versions");
        var body = await client.BodyOf("/v1/machines/one-head", ("id", "sampler"));

        var made = await client.Create("/v1/machines/sampler", body);
        var changed = await client.Change("/v1/machines/sampler", await client.BodyOf("/v1/machines/sampler", ("name", "Sampler at the door")), "\"1\"");

        made.Status.ShouldBe(HttpStatusCode.Created);
        made.Header("Location").ShouldBe("/v1/machines/sampler");
        made.Header("ETag").ShouldBe("\"1\"");
        changed.Status.ShouldBe(HttpStatusCode.OK);
        changed.Header("ETag").ShouldBe("\"2\"");
        (await client.Get("/v1/machines/sampler"))["name"].GetString().ShouldBe("Sampler at the door");
        (await client.Get("/v1/machines/sampler?version=1"))["name"].GetString().ShouldBe("One head, fifteen needles");
        (await client.Get("/v1/machines/sampler?version=3")).Code.ShouldBe("not-found");
        var versions = await client.Get("/v1/machines/sampler/versions");
        versions["items"].EnumerateArray().Select(item => item.GetProperty("version").GetInt32()).ShouldBe([2, 1]);
    }

    [Theory]
    [InlineData("/v1/cap-styles/visor")]
    [InlineData("/v1/cap-frames/wide-270")]
    [InlineData("/v1/machines/one-head")]
    [InlineData("/v1/framing-stations/gauge-1")]
    [InlineData("/v1/shop")]
    public async Task What_was_given_can_be_sent_back_as_it_is(string path)
    {
        var client = await Shop("round-trip");
        var given = await client.Get(path);

        var changed = await client.Change(path, given.Body.GetRawText(), given.Header("ETag")!);

        changed.Status.ShouldBe(HttpStatusCode.OK);
        changed["version"].GetInt32().ShouldBe(given["version"].GetInt32() + 1);
        (await client.Get(path))["name"].GetString().ShouldBe(given["name"].GetString());
    }

    [Fact]
    public async Task A_change_of_what_never_was_is_told_so()
    {
        var client = await Shop("never");

        var refused = await client.Change("/v1/cap-styles/nowhere", "{}", "\"1\"");

        refused.Code.ShouldBe("version-mismatch");
        refused["detail"].GetString().ShouldBe("There is no cap style 'nowhere' yet; If-None-Match: * creates it.");
    }

    [Fact]
    public async Task A_change_must_say_which_version_it_was_made_on()
    {
        var client = await Shop("conditions");
        const string Path = "/v1/framing-stations/gauge-1";
        var body = await client.BodyOf(Path);

        (await client.Call(HttpMethod.Put, Path, body)).Code.ShouldBe("version-required");
        (await client.Change(Path, body, "\"2\"")).Code.ShouldBe("version-mismatch");
        (await client.Change(Path, body, "W/\"1\"")).Code.ShouldBe("version-mismatch");
        (await client.Change(Path, body, "1")).Code.ShouldBe("header-invalid");
        (await client.Create(Path, body)).Code.ShouldBe("id-exists");
        (await client.Change("/v1/framing-stations/nowhere", body, "\"1\"")).Code.ShouldBe("version-mismatch");
        (await client.Call(HttpMethod.Put, Path, body, ("If-None-Match", "\"1\""))).Code.ShouldBe("header-invalid");
        (await client.Retire(Path, null)).Status.ShouldBe((HttpStatusCode)428);
        (await client.Retire(Path, "\"7\"")).Status.ShouldBe(HttpStatusCode.PreconditionFailed);
        (await client.Change(Path, body, "\"7\", \"1\"")).Header("ETag").ShouldBe("\"2\"");
    }

    [Fact]
    public async Task What_was_read_already_is_not_sent_again()
    {
        (await quiet.Client.Get("/v1/cap-styles/visor", "\"1\"")).Status.ShouldBe(HttpStatusCode.NotModified);
    }

    [Fact]
    public async Task A_retired_resource_leaves_the_list_and_keeps_its_versions()
    {
        var client = await Shop("retire");

        (await client.Retire("/v1/cap-frames/flat-clamp", "\"1\"")).Status.ShouldBe(HttpStatusCode.NoContent);
        (await client.Retire("/v1/cap-frames/flat-clamp", "\"2\"")).Status.ShouldBe(HttpStatusCode.NoContent);

        (await client.Get("/v1/cap-frames"))["items"].EnumerateArray().Select(item => item.GetProperty("id").GetString()).ShouldNotContain("flat-clamp");
        var gone = await client.Get("/v1/cap-frames/flat-clamp");
        gone["retired"].GetBoolean().ShouldBeTrue();
        gone["version"].GetInt32().ShouldBe(2);
        (await client.Create("/v1/cap-frames/flat-clamp", await client.BodyOf("/v1/cap-frames/flat-clamp"))).Code.ShouldBe("id-exists");
        var back = await client.Change("/v1/cap-frames/flat-clamp", await client.BodyOf("/v1/cap-frames/flat-clamp"), "\"2\"");
        back["retired"].GetBoolean().ShouldBeFalse();
    }

    [Fact]
    public async Task Every_fault_of_a_body_is_named()
    {
        var client = await Shop("faults");
        var body = await client.BodyOf("/v1/machines/one-head", ("heads", 0), ("colour", "red"), ("needles", null));

        var answer = await client.Change("/v1/machines/one-head", body, "\"1\"");

        answer.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        answer.Code.ShouldBe("catalog-invalid");
        answer.Faults.ShouldContain("/heads out-of-range");
        answer.Faults.ShouldContain("/colour unknown-field");
        answer.Faults.ShouldContain("/needles wrong-type");
    }

    [Fact]
    public async Task Ids_that_a_body_names_must_exist_and_its_own_must_be_the_addresss()
    {
        var client = await Shop("mentions");

        var frames = await client.Change("/v1/machines/one-head", await client.BodyOf("/v1/machines/one-head", ("capFrames", new JsonArray("wide-270", "narrow"))), "\"1\"");
        var own = await client.Create("/v1/machines/other", await client.BodyOf("/v1/machines/one-head"));

        frames.Faults.ShouldBe(["/capFrames/1 unknown-id"]);
        own.Faults.ShouldBe(["/id contradicts"]);
    }

    [Fact]
    public async Task An_article_number_belongs_to_one_style()
    {
        var client = await Shop("skus");
        await client.Change("/v1/cap-styles/visor", await client.BodyOf("/v1/cap-styles/visor", ("skus", new JsonArray("QC-700"))), "\"1\"");

        var taken = await client.Change("/v1/cap-styles/six-panel-structured-low", await client.BodyOf("/v1/cap-styles/six-panel-structured-low", ("skus", new JsonArray("qc-700"))), "\"1\"");
        var job = await client.Post("""{"orderNumber":"C-1","capSku":"qc-700","quantity":5}""", Upload.Tape);

        taken.Faults.ShouldBe(["/skus/0 contradicts"]);
        job["inputs"].GetProperty("capStyle").GetRawText().ShouldBe("""{"id":"visor","version":2}""");
    }

    [Fact]
    public async Task A_list_is_read_page_by_page()
    {
        var client = await Shop("pages");
        var ids = new List<string?>();
        var path = "/v1/cap-styles?limit=3";
        for (var more = true; more;)
        {
            var page = await client.Get(path);
            ids.AddRange(page["items"].EnumerateArray().Select(item => item.GetProperty("id").GetString()));
            more = page["more"].GetBoolean();
            path = more ? $"/v1/cap-styles?limit=3&cursor={page["cursor"].GetString()}" : path;
        }

        ids.Count.ShouldBe(8);
        ids.ShouldBe(ids.Order(StringComparer.Ordinal));
        (await client.Get("/v1/machines?limit=3&cursor=" + path[(path.LastIndexOf('=') + 1)..])).Code.ShouldBe("query-invalid");
        (await client.Get("/v1/machines?limit=0&style=x")).Faults.ShouldBe(["style unknown-field", "limit out-of-range"]);
    }

    [Theory]
    [InlineData("one")]
    [InlineData("99999999999")]
    [InlineData("")]
    public async Task A_cursor_of_versions_that_was_tampered_with_is_refused(string position)
    {
        var client = await Shop("cursors");
        var print = DocumentStore.Sha(Encoding.UTF8.GetBytes("cap-styles/visor"))[..8];
        var cursor = Base64Url.EncodeToString(Encoding.UTF8.GetBytes($"{print} {position}"));

        var answer = await client.Get("/v1/cap-styles/visor/versions?cursor=" + cursor);

        answer.Code.ShouldBe("query-invalid");
        answer.Faults.ShouldBe(["cursor contradicts"]);
    }

    [Fact]
    public async Task A_job_keeps_the_version_it_was_accepted_with()
    {
        var client = await Shop("pins");
        var first = await client.Post(Upload.Ticket("C-2"), Upload.Tape);
        await client.Change("/v1/machines/eight-head", await client.BodyOf("/v1/machines/eight-head", ("name", "Eight heads, serviced")), "\"1\"");
        var second = await client.Post(Upload.Ticket("C-2"), Upload.Tape);

        first["inputs"].GetProperty("machine").GetProperty("version").GetInt32().ShouldBe(1);
        second["inputs"].GetProperty("machine").GetProperty("version").GetInt32().ShouldBe(2);
    }

    [Fact]
    public async Task Every_change_is_noted_with_who_made_it()
    {
        var client = await Shop("audited");
        await client.Change("/v1/cap-styles/visor", await client.BodyOf("/v1/cap-styles/visor", ("name", "Visor, wide")), "\"1\"");
        await client.Retire("/v1/cap-styles/visor", "\"2\"");

        var rows = await quiet.Service.Look(db => db.Audit.Where(row => row.Shop == "audited" && row.Kind == "cap-styles").OrderBy(row => row.Id).ToArrayAsync());

        rows.Select(row => (row.Action, row.Kind, row.Target, row.Version)).ShouldBe(
            [("put", "cap-styles", "visor", (int?)2), ("retire", "cap-styles", "visor", (int?)3)]);
        rows[0].BeforeSha.ShouldNotBe(rows[0].AfterSha);
        rows.ShouldAllBe(row => row.Key.StartsWith("key_"));
    }

    [Fact]
    public async Task Another_shops_catalog_is_its_own()
    {
        var here = await Shop("here");
        var there = await Shop("there");
        await here.Create("/v1/machines/sampler", await here.BodyOf("/v1/machines/one-head", ("id", "sampler")));

        (await there.Get("/v1/machines/sampler")).Code.ShouldBe("not-found");
        (await there.Post(Upload.Ticket("C-3", ("machine", "sampler")), Upload.Tape)).Faults.ShouldBe(["/machine unknown-id"]);
    }

    [Theory]
    [InlineData("fit", "/v1/cap-styles", true)]
    [InlineData("fit", "/v1/cap-styles/visor", false)]
    [InlineData("read", "/v1/cap-styles/visor/versions", true)]
    [InlineData("submit", "/v1/shop", false)]
    public async Task A_key_sees_what_its_scope_admits(string scope, string path, bool admitted)
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("main", scope));

        (await client.Get(path)).Status.ShouldBe(admitted ? HttpStatusCode.OK : HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Only_json_of_a_sensible_size_is_taken()
    {
        var client = await Shop("bodies");

        (await client.Change("/v1/cap-styles/visor", new string(' ', 300_000), "\"1\"")).Code.ShouldBe("body-too-large");
        (await client.Change("/v1/cap-styles/visor", "{\"id\":", "\"1\"")).Code.ShouldBe("request-malformed");
    }

    [Fact]
    public async Task The_examples_can_be_put_one_after_the_other()
    {
        var client = await Shop("examples");
        foreach (var kind in new[] { "cap-style", "cap-frame", "machine", "framing-station", "rule-book" })
        {
            var file = Path.Combine(Repository.Root, "openapi", "examples", kind + ".json");
            var example = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            var path = $"/v1/{kind}s/{JsonNode.Parse(example)!["id"]}";
            var tag = (await client.Get(path)).Header("ETag");

            var answer = tag is null ? await client.Create(path, example) : await client.Change(path, example, tag);

            answer.Faults.ShouldBeEmpty(kind);
            answer.Header("ETag").ShouldNotBeNull();
        }
    }

    private async Task<HttpClient> Shop(string name) =>
        quiet.Service.ClientWith(await quiet.Service.NewKey(name, "manage", "read", "submit"));
}
