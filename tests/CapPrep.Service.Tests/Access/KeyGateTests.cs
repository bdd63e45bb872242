using System.Net;
using System.Text.Json;
using CapPrep.Service.Access;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Access;

public sealed class KeyGateTests
{
    [Fact]
    public async Task A_call_without_key_or_with_another_scheme_is_told_so()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);

        foreach (var header in new[] { null, "", "Bearer", "Bearer ", $"Basic {bench.Service.Key}", bench.Service.Key })
        {
            var answer = await bench.Service.ClientWith(null).Call(HttpMethod.Get, "/v1/jobs", null, ("Authorization", header));

            answer.Status.ShouldBe(HttpStatusCode.Unauthorized);
            answer.Code.ShouldBe("key-missing", header);
            answer.Header("WWW-Authenticate").ShouldBe("Bearer");
        }

        (await bench.Service.ClientWith(null).Call(HttpMethod.Get, "/v1/jobs", null, ("Authorization", $"bearer {bench.Service.Key}")))
            .Status.ShouldBe(HttpStatusCode.OK);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_key_works_until_it_expires(Store store)
    {
        await using var bench = await KeyBench.Start(store);
        var key = (await bench.Add("""{"name":"guest","scopes":["read"],"expires":"2026-11-25T09:19:04Z"}"""))["key"].GetString();
        var client = bench.Service.ClientWith(key);

        bench.Clock.Advance(TimeSpan.FromMinutes(60) - TimeSpan.FromMilliseconds(1));
        var before = await client.Call(HttpMethod.Get, "/v1/jobs", null);
        bench.Clock.Advance(TimeSpan.FromMilliseconds(1));
        var after = await client.Call(HttpMethod.Get, "/v1/jobs", null);

        before.Status.ShouldBe(HttpStatusCode.OK);
        after.Status.ShouldBe(HttpStatusCode.Unauthorized);
        after.Code.ShouldBe("key-expired");
        after["detail"].GetString()!.ShouldContain("2026-11-25T09:19:04.000Z");
    }

    [Fact]
    public async Task A_key_in_the_query_is_refused_even_when_it_is_good()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);
        foreach (var query in new[] { $"?key={bench.Service.Key}", $"?limit=1&access_token={bench.Service.Key}", $"?{bench.Service.Key}" })
        {
            var answer = await bench.Service.Client.Call(HttpMethod.Get, "/v1/jobs" + query, null);

            answer.Status.ShouldBe(HttpStatusCode.BadRequest);
            answer.Code.ShouldBe("key-in-url", query);
            answer.Body.GetRawText().ShouldNotContain(bench.Service.Key[12..]);
        }
    }

    [Fact]
    public async Task After_twenty_wrong_keys_an_address_has_to_wait_and_good_keys_go_on()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);
        var codes = new List<string?>();
        foreach (var wrong in Enumerable.Range(0, 21).Select(i => i % 2 == 0 ? KeyForm.New() : "cpk_short"))
            codes.Add((await bench.Service.ClientWith(wrong).Call(HttpMethod.Get, "/v1/jobs", null)).Code);

        var last = await bench.Service.ClientWith(KeyForm.New()).Call(HttpMethod.Get, "/v1/jobs", null);

        codes.Take(20).ShouldAllBe(code => code == "key-invalid");
        codes[20].ShouldBe("wrong-keys");
        last.Status.ShouldBe(HttpStatusCode.TooManyRequests);
        last.Header("Retry-After").ShouldBe("60");
        (await bench.Service.Client.Call(HttpMethod.Get, "/v1/jobs", null)).Status.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Use_is_noted_once_a_minute()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);
        var added = await bench.Add("""{"name":"erp","scopes":["read"]}""");
        var client = bench.Service.ClientWith(added["key"].GetString());
        var used = new List<DateTimeOffset?>();

        for (var i = 0; i < 4; i++)
        {
            await client.Call(HttpMethod.Get, "/v1/jobs", null);
            used.Add(await bench.Service.Look(db => db.Keys.Where(row => row.Id == added.Body.Id()).Select(row => row.LastUsed).SingleAsync()));
            bench.Clock.Advance(TimeSpan.FromSeconds(30));
        }

        used[0].ShouldNotBeNull();
        used[1].ShouldBe(used[0]);
        used[2].ShouldBe(used[0]!.Value.AddMinutes(1));
        used[3].ShouldBe(used[2]);
    }

    [Fact]
    public async Task A_key_that_asks_too_often_is_told_when_to_come_again()
    {
        await using var service = await ServiceUnderTest.Start(Intake.QuietService.Quiet(Store.Sqlite, ("Http:RequestsPerMinute", "3")));

        var answers = new List<Answer>();
        for (var i = 0; i < 5; i++)
            answers.Add(await service.Client.Call(HttpMethod.Get, "/v1/jobs", null));

        answers[0].Header("RateLimit-Policy").ShouldBe("\"requests\";q=3;w=60");
        answers[0].Header("RateLimit")!.ShouldStartWith("\"requests\";r=2");
        answers.ShouldContain(answer => answer.Code == "rate-limited");
        answers.First(answer => answer.Code == "rate-limited").Header("Retry-After").ShouldBe("1");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task The_first_key_of_a_shop_finds_the_starter_catalog(Store store)
    {
        await using var bench = await KeyBench.Start(store);
        var added = await bench.Add("""{"name":"first","shop":"harbor","scopes":["manage","read"]}""");
        var client = bench.Service.ClientWith(added["key"].GetString());

        (await client.Call(HttpMethod.Get, "/v1/shop", null))["shop"].GetString().ShouldBe("harbor");
        (await client.Call(HttpMethod.Get, "/v1/cap-styles", null))["items"].GetArrayLength().ShouldBeGreaterThan(0);
        (await client.Call(HttpMethod.Get, "/v1/rule-books/house", null)).Status.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Only_the_print_of_a_key_is_stored()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);
        var key = (await bench.Add("""{"name":"erp","scopes":["read"]}"""))["key"].GetString()!;

        var row = await bench.Service.Look(db => db.Keys.SingleAsync(row => row.Name == "erp"));

        row.Hash.ShouldBe(KeyForm.Hash(key));
        row.Start.ShouldBe(key[..12]);
        JsonSerializer.Serialize(row).ShouldNotContain(key[12..]);
    }

    [Fact]
    public async Task Routes_without_scopes_need_no_key()
    {
        await using var bench = await KeyBench.Start(Store.Sqlite);

        var live = await bench.Service.ClientWith(null).GetAsync("/health/live");

        live.StatusCode.ShouldBe(HttpStatusCode.OK);
    }
}
