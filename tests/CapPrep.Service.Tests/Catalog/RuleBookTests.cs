using System.Text.Json;
using CapPrep.Engine.Trade;
using CapPrep.Service.Tests.Intake;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Catalog;

public sealed class RuleBookTests(QuietService quiet) : IClassFixture<QuietService>
{
    private const string Book = """
        {
          "id": "quay", "name": "Quay caps", "basedOn": "house",
          "rules": { "place.too-tall": { "limits": { "warn": 50 } } },
          "overrides": [ { "when": { "customer": "north-pier" }, "rules": { "place.too-tall": { "limits": { "warn": 52 } } }, "because": "Sewn and accepted." } ]
        }
        """;

    [Fact]
    public async Task The_built_in_book_shows_every_rule_and_cannot_be_changed()
    {
        var house = await quiet.Client.Get("/v1/rule-books/house");

        house["builtIn"].GetBoolean().ShouldBeTrue();
        house["version"].GetInt32().ShouldBe(Embedded.HouseBook.Version);
        house["rules"].GetArrayLength().ShouldBe(Embedded.HouseBook.Rows.Count);
        (await quiet.Client.Change("/v1/rule-books/house", Book, "\"1\"")).Code.ShouldBe("built-in");
        (await quiet.Client.Retire("/v1/rule-books/house", "\"1\"")).Code.ShouldBe("built-in");
        (await quiet.Client.Get("/v1/rule-books"))["items"][0].TryGetProperty("rules", out _).ShouldBeFalse();
    }

    [Fact]
    public async Task A_merged_book_says_who_set_each_limit()
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("merged", "manage", "read", "submit"));
        await client.Create("/v1/rule-books/quay", Book);

        var usual = await client.Get("/v1/rule-books/quay?effective=true");
        var north = await client.Get("/v1/rule-books/quay?effective=true&customer=north-pier&location=left");
        var house = await client.Get("/v1/rule-books/house?effective=true");

        Warn(usual).GetProperty("value").GetDouble().ShouldBe(50);
        Warn(usual).GetProperty("setBy").GetRawText().ShouldBe("""{"ruleBook":"quay","version":1}""");
        Warn(north).GetProperty("value").GetDouble().ShouldBe(52);
        Warn(house).GetProperty("setBy").GetProperty("ruleBook").GetString().ShouldBe("house");
        usual["rules"].GetArrayLength().ShouldBe(Embedded.HouseBook.Rows.Count);
        north["when"].GetRawText().ShouldBe("""{"customer":"north-pier","location":"left"}""");
    }

    [Fact]
    public async Task A_ticket_pins_the_book_and_the_built_in_one_below_it()
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("based", "manage", "submit"));
        await client.Create("/v1/rule-books/quay", Book);

        var job = await client.Post(Upload.Ticket("B-1", ("ruleBook", "quay")), Upload.Tape);

        job["inputs"].GetProperty("ruleBook").GetRawText().ShouldBe(
            $$$"""{"id":"quay","version":1,"basedOn":{"id":"house","version":{{{Embedded.HouseBook.Version}}}}}""");
    }

    [Fact]
    public async Task Wrong_rules_and_styles_are_named()
    {
        var body = """{ "id": "odd", "name": "Odd", "rules": { "place.too-loud": { "off": true } } }""";
        var style = """{ "id": "odd", "name": "Odd", "overrides": [ { "when": { "capStyle": "bowler" }, "rules": {} } ] }""";

        var rules = await quiet.Client.Create("/v1/rule-books/odd", body);
        var styles = await quiet.Client.Create("/v1/rule-books/odd", style);

        rules.Code.ShouldBe("rule-book-invalid");
        rules.Faults.ShouldBe(["/rules/place.too-loud unknown-id"]);
        styles.Faults.ShouldContain("/overrides/0/when/capStyle unknown-id");
    }

    [Theory]
    [InlineData("effective=maybe", "effective")]
    [InlineData("effective=true&location=nose", "location")]
    [InlineData("customer=x", "effective")]
    [InlineData("effective=true&colour=red", "colour")]
    public async Task A_question_that_cannot_be_read_is_refused(string query, string named)
    {
        var answer = await quiet.Client.Get("/v1/rule-books/house?" + query);

        answer.Code.ShouldBe("query-invalid");
        answer.Faults.ShouldContain(fault => fault.StartsWith(named));
    }

    private static JsonElement Warn(Answer book) => book["rules"].EnumerateArray()
        .Single(rule => rule.GetProperty("rule").GetString() == "place.too-tall")
        .GetProperty("limits").EnumerateArray()
        .Single(limit => limit.GetProperty("level").GetString() == "warn");
}
