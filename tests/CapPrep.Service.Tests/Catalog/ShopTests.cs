using System.Net;
using System.Text.Json.Nodes;
using CapPrep.Service.Storage;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Catalog;

public sealed class ShopTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Fact]
    public async Task A_shop_shows_its_name_as_its_key_knows_it()
    {
        var client = await Shop("named");

        var shop = await client.Get("/v1/shop");

        shop["shop"].GetString().ShouldBe("named");
        shop["version"].GetInt32().ShouldBe(1);
        shop["defaults"].GetProperty("machine").GetString().ShouldBe("eight-head");
    }

    [Fact]
    public async Task What_a_shop_decides_goes_for_its_next_ticket()
    {
        var client = await Shop("decides");
        var body = await client.BodyOf("/v1/shop", ("defaults", JsonNode.Parse("""{"machine":"one-head","framingStation":"gauge-2","ruleBook":"house","threadWeightWt":60}""")));

        (await client.Change("/v1/shop", body, "\"1\"")).Status.ShouldBe(HttpStatusCode.OK);
        var job = await client.Post(Upload.Ticket("S-1"), Upload.Tape);

        job["ticket"].GetProperty("machine").GetString().ShouldBe("one-head");
        job["ticket"].GetProperty("threadWeightWt").GetInt32().ShouldBe(60);
        job["inputs"].GetProperty("framingStation").GetProperty("id").GetString().ShouldBe("gauge-2");
    }

    [Fact]
    public async Task Defaults_must_be_in_use()
    {
        var client = await Shop("defaults");
        await client.Retire("/v1/machines/eighteen-head", "\"1\"");
        var body = await client.BodyOf("/v1/shop", ("defaults", JsonNode.Parse("""{"machine":"eighteen-head","framingStation":"gauge-9","ruleBook":"house","threadWeightWt":40}""")));

        var answer = await client.Change("/v1/shop", body, "\"1\"");

        answer.Faults.ShouldBe(["/defaults/machine retired-id", "/defaults/framingStation unknown-id"]);
    }

    [Fact]
    public async Task A_default_that_was_retired_is_told_to_who_names_nothing_else()
    {
        var client = await Shop("leftover");
        await client.Retire("/v1/machines/eight-head", "\"1\"");

        var answer = await client.Post(Upload.Ticket("S-2"), Upload.Tape);
        var named = await client.Post(Upload.Ticket("S-2", ("machine", "one-head")), Upload.Tape);

        answer.Faults.ShouldBe(["/machine retired-id"]);
        answer["violations"][0].GetProperty("message").GetString()!.ShouldContain("the shop's own");
        named.Status.ShouldBe(HttpStatusCode.Accepted);
    }

    [Fact]
    public async Task The_starter_follows_the_program_only_where_nobody_changed_it()
    {
        var client = await Shop("seeded");
        await client.Change("/v1/machines/one-head", await client.BodyOf("/v1/machines/one-head", ("name", "Ours")), "\"1\"");
        await quiet.Service.Look(db => db.Catalog
            .Where(row => row.Shop == "seeded" && (row.Id == "visor" || (row.Id == "one-head" && row.Version == 1)))
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Sha256, "of an older program")));

        await quiet.Service.Within(null, async services =>
        {
            await services.GetRequiredService<StarterSeed>().OpenAll(CancellationToken.None);
            return true;
        });

        (await client.Get("/v1/cap-styles/visor"))["version"].GetInt32().ShouldBe(2);
        (await client.Get("/v1/machines/one-head"))["name"].GetString().ShouldBe("Ours");
        (await client.Get("/v1/machines/eight-head"))["version"].GetInt32().ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Two_changes_of_one_version_at_once_let_one_through(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(store));
        var body = await service.Client.BodyOf("/v1/shop");

        var answers = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => service.Client.Change("/v1/shop", body, "\"1\"")));

        answers.Count(answer => answer.Status == HttpStatusCode.OK).ShouldBe(1);
        answers.Count(answer => answer.Code == "version-mismatch").ShouldBe(9);
    }

    private async Task<HttpClient> Shop(string name) =>
        quiet.Service.ClientWith(await quiet.Service.NewKey(name, "manage", "read", "submit"));
}
