using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.TestKit;
using Shouldly;
using Xunit;
using static CapPrep.Engine.Tests.Tickets.TicketJson;

namespace CapPrep.Engine.Tests.Tickets;

public sealed class TicketReaderTests
{
    [Fact]
    public void Absent_members_stay_unknown()
    {
        var ticket = Ticket(Least);

        ticket.ShouldBe(new Ticket { OrderNumber = "HL-1042", CapStyle = "five-panel", Quantity = 48 });
    }

    [Fact]
    public void The_published_example_is_read()
    {
        var ticket = TicketReader.Read(Example("ticket.json")).Value.ShouldNotBeNull();

        ticket.OrderNumber.ShouldBe("HL-1042");
        ticket.Quantity.ShouldBe(48);
        ticket.Seating.ShouldBe(new TicketSeating { By = SeatingBase.Box, BaseAboveBrimMm = 15, OffsetRightMm = 0 });
        ticket.Threads![1].ShouldBe(new TicketThread { Block = 2, Name = "Sand", Color = "#D9C7A0", Code = "1055", WeightWt = 40 });
        ticket.DueDate.ShouldBe(new DateOnly(2026, 12, 4));
        Encoding.UTF8.GetString(ticket.Echo!.Value.Span).ShouldBe("""{ "erpDocument": "4711", "row": 10 }""");
    }

    [Fact]
    public void The_published_refusal_of_a_ticket_is_what_the_reader_says()
    {
        var told = Violations("problem-ticket-invalid.json").Skip(1);

        var found = Read("""{"orderNumber":"A","qty":48,"capStyle":"six-panel","quantity":0}""").Violations;

        found.Select(Written).ShouldBe(told.Select(violation => violation!.ToJsonString()));
    }

    [Theory]
    [InlineData("problem-ticket-invalid.json", "ticket-invalid")]
    [InlineData("problem-tape-invalid.json", "tape-invalid")]
    public void A_published_refusal_carries_only_known_codes(string file, string code)
    {
        var known = typeof(ViolationCodes).GetFields().Select(field => (string)field.GetRawConstantValue()!);

        JsonNode.Parse(Example(file))!["code"]!.GetValue<string>().ShouldBe(code);
        Violations(file).Select(violation => violation!["code"]!.GetValue<string>()).ShouldBeSubsetOf(known);
    }

    [Fact]
    public void All_faults_are_reported_at_once()
    {
        var violations = Read("""
            {
              "orderNumber": "",
              "quantity": 0, "quantity": 100001,
              "qty": 1,
              "line": null,
              "seating": { "by": "brim", "centerXMm": 3, "up": 1 },
              "expectedSize": { },
              "threads": [ { "block": 1 }, { "block": 1, "foam": "no" }, 7, { "name": "Navy" } ],
              "capColor": { },
              "capLots": [ { "quantity": 3, "sizes": [ { "size": "S" } ] } ],
              "echo": [[[[[[[[[]]]]]]]]]
            }
            """).Violations;

        violations.Select(fault => $"{fault.Pointer} {fault.Code}").Order(StringComparer.Ordinal).ShouldBe(
        [
            "/capColor required",
            "/capLots/0/sizes/0/quantity required",
            "/capStyle required",
            "/echo too-long",
            "/expectedSize required",
            "/line wrong-type",
            "/orderNumber bad-format",
            "/qty unknown-field",
            "/quantity duplicate-field",
            "/quantity out-of-range",
            "/seating/by bad-format",
            "/seating/centerXMm contradicts",
            "/seating/up unknown-field",
            "/threads/1/block contradicts",
            "/threads/1/foam wrong-type",
            "/threads/2 wrong-type",
            "/threads/3/block required",
        ]);
    }

    [Fact]
    public void An_unknown_member_is_answered_with_all_members_there_are()
    {
        var fault = Read(With("\"qty\":1")).Violations.Single();

        fault.Message.ShouldBe("A ticket has no field 'qty'.");
        fault.Allowed.ShouldBe(TicketReader.Fields);
        fault.Allowed.ShouldBe(fault.Allowed.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("seating", "{\"z\":1}", "baseAboveBrimMm by centerBy centerXMm offsetRightMm")]
    [InlineData("expectedSize", "{\"widthMm\":9,\"z\":1}", "heightMm widthMm")]
    [InlineData("threads", "[{\"block\":1,\"z\":1}]", "action block code color foam kind name weightWt")]
    [InlineData("sewOrder", "{\"z\":1}", "allowExtraColorChanges allowExtraTrims extraMinutes mode")]
    [InlineData("capColor", "{\"name\":\"a\",\"z\":1}", "color name")]
    [InlineData("capLots", "[{\"quantity\":48,\"z\":1}]", "capColor capSku quantity sizes threads")]
    [InlineData("capLots", "[{\"quantity\":48,\"sizes\":[{\"size\":\"S\",\"quantity\":1,\"z\":1}]}]", "quantity size")]
    public void An_unknown_member_of_an_inner_object_is_answered_with_that_objects_members(string name, string json, string allowed)
    {
        var fault = Read(With($"\"{name}\":{json}")).Violations.Single();

        (fault.Code, fault.Message).ShouldBe((ViolationCodes.UnknownField, "This object has no field 'z'."));
        fault.Allowed.ShouldBe(allowed.Split(' '));
    }

    [Theory]
    [InlineData("orderNumber", "A ticket needs a field 'orderNumber'.")]
    [InlineData("quantity", "A ticket needs a field 'quantity'.")]
    [InlineData("capStyle", "A ticket needs a field 'capStyle' or 'capSku'.")]
    public void A_missing_member_is_named(string name, string message)
    {
        var json = JsonNode.Parse(Least)!.AsObject();
        json.Remove(name);

        var fault = Read(json.ToJsonString()).Violations.Single();

        (fault.Pointer, fault.Code, fault.Message).ShouldBe(("/" + name, ViolationCodes.Required, message));
    }

    [Fact]
    public void A_style_beside_an_article_number_contradicts()
    {
        var fault = Read("""{"orderNumber":"A","capStyle":"a","capSku":"b","quantity":1}""").Violations.Single();

        (fault.Pointer, fault.Code).ShouldBe(("/capSku", ViolationCodes.Contradicts));
    }

    [Theory]
    [InlineData("{\"centerBy\":\"x\"}", ViolationCodes.Required)]
    [InlineData("{\"centerBy\":\"box\",\"centerXMm\":0}", ViolationCodes.Contradicts)]
    [InlineData("{\"centerXMm\":0}", ViolationCodes.Contradicts)]
    public void The_x_to_center_on_goes_with_centering_by_x_only(string seating, string code)
    {
        var fault = Read(With($"\"seating\":{seating}")).Violations.Single();

        (fault.Pointer, fault.Code).ShouldBe(("/seating/centerXMm", code));
    }

    [Theory]
    [InlineData(40, 8, true)]
    [InlineData(40, 7, false)]
    [InlineData(40, 9, false)]
    public void The_lots_add_up_to_the_order(int first, int second, bool read)
    {
        var violations = Read(With($$"""  "capLots":[{"quantity":{{first}}},{"quantity":{{second}}}]  """)).Violations;

        violations.Select(fault => (fault.Pointer, fault.Code, fault.Message)).ShouldBe(
            read ? [] : [("/capLots", ViolationCodes.Contradicts, $"The lots hold {first + second} caps, the ticket 48.")]);
    }

    [Theory]
    [InlineData("\"capLots\":[{\"quantity\":0},{\"quantity\":7}]", "/capLots/0/quantity")]
    [InlineData("\"capLots\":[3,{\"quantity\":7}]", "/capLots/0")]
    [InlineData("\"capLots\":[{\"quantity\":7}],\"quantity\":0", "/quantity")]
    [InlineData("\"seating\":{\"centerBy\":\"y\",\"centerXMm\":1}", "/seating/centerBy")]
    public void A_contradiction_is_not_told_where_the_fault_lies_elsewhere(string members, string pointer)
    {
        Read(With(members)).Violations.Select(fault => fault.Pointer).ShouldBe([pointer]);
    }

    [Fact]
    public void Lots_may_each_name_the_same_block()
    {
        const string Threads = "\"threads\":[{\"block\":1}]";

        Read(With($$"""{{Threads}},"capLots":[{"quantity":24,{{Threads}}},{"quantity":24,{{Threads}}}]""")).Violations.ShouldBeEmpty();
    }

    [Fact]
    public void Letters_of_colors_and_digests_have_one_case()
    {
        var ticket = Ticket(With($$"""  "capColor":{"color":"#aAbBcC"},"tapeSha256":"{{new string('F', 64)}}"  """));

        ticket.CapColor!.Color.ShouldBe("#AABBCC");
        ticket.TapeSha256.ShouldBe(new string('f', 64));
    }

    [Fact]
    public void Characters_outside_the_first_plane_count_once()
    {
        var caps = string.Concat(Enumerable.Repeat("🧢", 64));

        Ticket(With($"\"orderNumber\":\"{caps}\"")).OrderNumber.ShouldBe(caps);
        Read(With($"\"orderNumber\":\"{caps}🧢\"")).Violations.Single().Message.ShouldBe("65 characters found, at most 64 allowed.");
    }

    [Theory]
    [InlineData("orderNumber", "/orderNumber")]
    [InlineData("capSku", "/capSku")]
    [InlineData("machine", "/machine")]
    [InlineData("location", "/location")]
    [InlineData("dueDate", "/dueDate")]
    [InlineData("tapeSha256", "/tapeSha256")]
    [InlineData("\\udde2", "")]
    public void Half_a_surrogate_pair_is_refused_wherever_it_stands(string name, string pointer)
    {
        var violations = Read($$"""{"{{name}}":"a\ud83e"}""").Violations;

        violations.Select(fault => (fault.Pointer, fault.Code)).ShouldContain((pointer, ViolationCodes.BadFormat));
    }

    [Fact]
    public void Broken_JSON_is_refused_at_its_byte()
    {
        var fault = Read("{\n  \"orderNumber\": \"A\",\n  quantity: 48\n}").Violations.Single();

        (fault.Part, fault.Code, fault.ByteOffset).ShouldBe(("ticket", ViolationCodes.BadFormat, 26));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("\"ticket\"")]
    [InlineData("PK\u0003\u0004")]
    public void What_is_no_object_is_refused(string json) => Read(json).Violations.Count.ShouldBe(1);

    [Fact]
    public void A_ticket_nested_a_million_deep_is_refused()
    {
        Read(With("\"echo\":1").Replace("1}", new string('[', 1_000_000), StringComparison.Ordinal)).Violations.Single()
            .Code.ShouldBe(ViolationCodes.BadFormat);
    }

    [Fact]
    public void A_hundred_thousand_unknown_members_are_all_reported()
    {
        var members = string.Join(",", Enumerable.Range(0, 100_000).Select(n => $"\"f{n}\":0"));

        Read($$"""{"orderNumber":"A","capStyle":"a","quantity":1,{{members}}}""").Violations.Count.ShouldBe(100_000);
    }

    private static byte[] Example(string file) => File.ReadAllBytes(Path.Combine(Repository.Root, "openapi", "examples", file));

    private static JsonArray Violations(string file) => JsonNode.Parse(Example(file))!["violations"]!.AsArray();

    private static string Written(Violation violation)
    {
        var json = new JsonObject { ["part"] = violation.Part, ["pointer"] = violation.Pointer, ["code"] = violation.Code, ["message"] = violation.Message };
        if (violation.Minimum is { } minimum)
            json["minimum"] = minimum;
        if (violation.Maximum is { } maximum)
            json["maximum"] = maximum;
        if (violation.Allowed.Count > 0)
            json["allowed"] = new JsonArray([.. violation.Allowed.Select(value => JsonValue.Create(value))]);
        return json.ToJsonString();
    }
}
