using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Engine.Tickets;
using CsCheck;
using Shouldly;
using Xunit;
using static CapPrep.Engine.Tests.Tickets.TicketJson;

namespace CapPrep.Engine.Tests.Tickets;

public sealed class TicketWriterTests
{
    [Fact]
    public void The_canonical_form_has_one_order_no_white_space_and_only_what_was_given()
    {
        Canonical("""
            {
              "echo": { "b" : 1.50 , "a":null },
              "capLots": [ { "quantity": 4.8e1, "capSku": "K 7" } ],
              "threads": [ { "name": "Café", "block": 2 }, { "block": 1 } ],
              "seating": { "offsetRightMm": -0.0, "centerXMm": 12.50, "centerBy": "x" },
              "quantity": 48, "sewOrder": { },
              "capColor": { "color": "#0a0b0c" },
              "capStyle": "five-panel", "dueDate": "2026-12-04", "orderNumber": "HL-1042"
            }
            """).ShouldBe(
            """
            {"orderNumber":"HL-1042","capStyle":"five-panel","quantity":48,
            "seating":{"centerBy":"x","centerXMm":12.5,"offsetRightMm":0},
            "threads":[{"block":2,"name":"Caf\u00E9"},{"block":1}],"dueDate":"2026-12-04",
            "capColor":{"color":"#0A0B0C"},"capLots":[{"capSku":"K 7","quantity":48}],"echo":{ "b" : 1.50 , "a":null }}
            """.ReplaceLineEndings(""));
    }

    [Fact]
    public void A_different_thread_order_is_a_different_ticket()
    {
        Canonical(With("""  "threads":[{"block":1},{"block":2}]  """))
            .ShouldNotBe(Canonical(With("""  "threads":[{"block":2},{"block":1}]  """)));
    }

    [Fact]
    public void Every_member_that_can_be_read_is_written()
    {
        var full = AnyTicket.WithAnything.Where(ticket => ticket.Echo is not null).Array[200];

        var written = new HashSet<string>();
        full.Sample(
            tickets =>
            {
                foreach (var ticket in tickets)
                    written.UnionWith(JsonNode.Parse(TicketWriter.Canonical(ticket))!.AsObject().Select(member => member.Key));
            },
            iter: 1);

        written.Order(StringComparer.Ordinal).ShouldBe(TicketReader.Fields);
    }

    [Fact]
    public void Members_are_written_in_the_order_in_which_they_are_listed()
    {
        AnyTicket.WithAnything.Sample(ticket =>
        {
            var names = JsonNode.Parse(TicketWriter.Canonical(ticket))!.AsObject().Select(member => member.Key).ToArray();
            return names.SequenceEqual(TicketMembers.Names.Intersect(names));
        });
    }

    [Fact]
    public void The_canonical_form_reads_back_as_the_same_ticket() =>
        AnyTicket.WithAnything.Sample(
            ticket => AnyTicket.Same(ticket, Ticket(Encoding.UTF8.GetString(TicketWriter.Canonical(ticket)))), iter: 1_000);

    [Fact]
    public void The_canonical_form_of_the_canonical_form_is_itself() =>
        AnyTicket.WithAnything.Sample(
            ticket =>
            {
                var canonical = TicketWriter.Canonical(ticket);
                return canonical.SequenceEqual(TicketWriter.Canonical(TicketReader.Read(canonical).Value!));
            },
            iter: 1_000);

    [Fact]
    public void Order_of_members_and_white_space_do_not_change_the_canonical_form()
    {
        Gen.Select(AnyTicket.WithoutEcho, Gen.Int).Sample((ticket, seed) =>
        {
            var canonical = TicketWriter.Canonical(ticket);
            var shuffled = Shuffled(JsonNode.Parse(canonical)!, new Random(seed));
            var rewritten = shuffled.ToJsonString(new JsonSerializerOptions { WriteIndented = true });
            return Canonical(rewritten) == Encoding.UTF8.GetString(canonical);
        });
    }

    [Fact]
    public void A_ticket_with_a_damaged_byte_is_read_or_refused()
    {
        Gen.Select(AnyTicket.WithAnything, Gen.Int[0, 100_000], Gen.Byte, Gen.Int[0, 2]).Sample(
            (ticket, place, value, kind) =>
            {
                var bytes = TicketWriter.Canonical(ticket).ToList();
                place %= bytes.Count;
                if (kind != 0)
                    bytes.RemoveAt(place);
                if (kind != 1)
                    bytes.Insert(place, value);
                var result = TicketReader.Read(bytes.ToArray());
                return result.Succeeded != result.Violations.Any();
            },
            iter: 2_000);
    }

    private static JsonNode Shuffled(JsonNode node, Random random) => node switch
    {
        JsonObject members => new JsonObject(
            members.OrderBy(_ => random.Next()).ToArray().Select(member => KeyValuePair.Create(member.Key, (JsonNode?)Shuffled(member.Value!, random)))),
        JsonArray items => new JsonArray([.. items.Select(item => Shuffled(item!, random))]),
        _ => node.DeepClone(),
    };
}
