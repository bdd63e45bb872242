using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using CapPrep.Service.Access;
using CapPrep.Service.Jobs;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Access;

public sealed class KeyRoutesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_key_is_made_shown_once_used_and_ended()
    {
        await using var service = await ServiceUnderTest.Start(ApiOnly());

        var (status, made) = await Add(service.Client, new { name = "storefront", scopes = new[] { "submit", "manage" }, expires = "2099-11-25T00:00:00Z" });
        status.ShouldBe(HttpStatusCode.Created);
        Names(made).ShouldBe(["id", "name", "shop", "scopes", "start", "key", "created", "expires"]);
        var key = made.GetProperty("key").GetString()!;
        KeyForm.IsWellFormed(key).ShouldBeTrue();
        key.ShouldStartWith(made.GetProperty("start").GetString()!);
        made.GetProperty("expires").GetString().ShouldBe("2099-11-25T00:00:00.000Z");

        var client = service.ClientWith(key);
        var list = await client.GetFromJsonAsync<JsonElement>("/v1/keys", Cancel);
        var shown = list.GetProperty("items").EnumerateArray().Single(row => row.GetProperty("id").GetString() == made.GetProperty("id").GetString());
        Names(shown).ShouldBe(["id", "name", "shop", "scopes", "start", "created", "expires", "lastUsed"]);

        (await client.DeleteAsync($"/v1/keys/{made.GetProperty("id").GetString()}", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await client.GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        var actions = await service.Look(db => db.Audit.Where(row => row.Kind == "key" && row.Target == made.GetProperty("id").GetString()).Select(row => row.Action).ToArrayAsync(Cancel));
        actions.ShouldBe(["add", "end"], ignoreOrder: true);
    }

    [Fact]
    public async Task A_manager_sees_and_ends_keys_of_the_own_shop_only()
    {
        await using var service = await ServiceUnderTest.Start(ApiOnly());
        var manager = service.ClientWith(await service.NewKey("uptown", Scopes.Manage));
        var foreign = await KeyOf(service, "main");

        var list = await manager.GetFromJsonAsync<JsonElement>("/v1/keys", Cancel);

        list.GetProperty("items").EnumerateArray().ShouldAllBe(row => row.GetProperty("shop").GetString() == "uptown");
        (await manager.DeleteAsync($"/v1/keys/{foreign}", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await Add(manager, new { name = "x", scopes = new[] { "read" }, shop = "main" })).Status.ShouldBe(HttpStatusCode.Forbidden);
        (await Add(manager, new { name = "x", scopes = new[] { "read", "operate" } })).Status.ShouldBe(HttpStatusCode.Forbidden);
        (await Add(manager, new { name = "x", scopes = new[] { "read" }, shop = "uptown" })).Body.GetProperty("shop").GetString().ShouldBe("uptown");
    }

    [Fact]
    public async Task An_operator_opens_shops_and_works_on_keys_of_all_and_on_nothing_else()
    {
        await using var service = await ServiceUnderTest.Start(ApiOnly());
        var operates = service.ClientWith(await service.NewKey("main", Scopes.Operate));

        var (status, made) = await Add(operates, new { name = "first", scopes = new[] { "manage" }, shop = "riverside" });
        status.ShouldBe(HttpStatusCode.Created);
        (await service.Look(db => db.Shops.AnyAsync(row => row.Shop == "riverside", Cancel))).ShouldBeTrue();
        var list = await operates.GetFromJsonAsync<JsonElement>("/v1/keys", Cancel);
        list.GetProperty("items").EnumerateArray().Select(row => row.GetProperty("shop").GetString()).Distinct().ShouldBe(["main", "riverside"], ignoreOrder: true);
        (await operates.DeleteAsync($"/v1/keys/{made.GetProperty("id").GetString()}", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await operates.GetAsync("/v1/webhooks", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Keys_with_other_scopes_are_turned_away()
    {
        await using var service = await ServiceUnderTest.Start(ApiOnly());
        var reader = service.ClientWith(await service.NewKey("main", Scopes.Read, Scopes.Submit, Scopes.Floor, Scopes.Fit));

        (await reader.GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
        (await Add(reader, new { name = "x", scopes = new[] { "read" } })).Status.ShouldBe(HttpStatusCode.Forbidden);
        (await reader.DeleteAsync("/v1/keys/key_1", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
        (await service.ClientWith(null).GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
    }

    [Theory]
    [InlineData("""{}""", "/name /scopes")]
    [InlineData("""{"name":"x","scopes":[]}""", "/scopes")]
    [InlineData("""{"name":"x","scopes":["read","all"]}""", "/scopes/1")]
    [InlineData("""{"name":"x","scopes":["read"],"shop":"Up Town","expires":"tomorrow"}""", "/shop /expires")]
    [InlineData("""{"name":"x","scopes":["read"],"expires":"2020-01-01T00:00:00Z"}""", "/expires")]
    [InlineData("""{"name":"x","scopes":["read"],"expires":"2099-01-01T00:00:00"}""", "/expires")]
    [InlineData("""{"name":"x","scopes":["read"],"key":"cpk_1"}""", "/key")]
    public async Task Every_fault_of_a_key_is_told_with_its_place(string body, string places)
    {
        await using var service = await ServiceUnderTest.Start(ApiOnly());

        var (status, problem) = await Add(service.Client, JsonDocument.Parse(body).RootElement);

        status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        problem.GetProperty("violations").EnumerateArray().Select(row => row.GetProperty("pointer").GetString()).ShouldBe(places.Split(' '));
    }

    [Fact]
    public async Task A_key_past_its_time_is_turned_away()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
        await using var service = await ServiceUnderTest.Start(ApiOnly() with { Clock = clock });
        var (_, made) = await Add(service.Client, new { name = "short", scopes = new[] { "manage" }, expires = "2026-11-25T09:00:00+01:00" });
        made.ValueKind.ShouldBe(JsonValueKind.Object);
        var (_, longer) = await Add(service.Client, new { name = "longer", scopes = new[] { "manage" }, expires = "2026-11-25T10:00:00+01:00" });
        var client = service.ClientWith(longer.GetProperty("key").GetString());

        (await client.GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        clock.Advance(TimeSpan.FromHours(1));

        made.GetProperty("code").GetString().ShouldBe("question-invalid");
        (await client.GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
    }

    private static ServiceOptions ApiOnly() => new()
    {
        Settings = new Dictionary<string, string?> { ["Roles"] = "api" },
        Adjust = services => services.AddSingleton<IHandover>(new NoHandover()),
    };

    private static async Task<(HttpStatusCode Status, JsonElement Body)> Add(HttpClient client, object body)
    {
        using var answer = await client.PostAsJsonAsync("/v1/keys", body, Cancel);
        return (answer.StatusCode, await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel));
    }

    private static Task<string> KeyOf(ServiceUnderTest service, string shop) =>
        service.Look(db => db.Keys.Where(row => row.Shop == shop).Select(row => row.Id).FirstAsync(Cancel));

    private static string[] Names(JsonElement element) => [.. element.EnumerateObject().Select(member => member.Name)];

    private sealed class NoHandover : IHandover
    {
        public void Prepare(string jobId)
        {
        }

        public void Deliver(string deliveryId)
        {
        }
    }
}
