using System.Buffers;
using System.Text;
using System.Text.Json;
using CapPrep.Engine.Tickets;
using CsCheck;
using Shouldly;
using Xunit;
using static CapPrep.Engine.Tests.Tickets.TicketJson;

namespace CapPrep.Engine.Tests.Tickets;

public sealed class TicketResolverTests
{
    private static readonly ShopDefaults Shop = new("eight-head", "gauge-1", "house", 40);

    [Fact]
    public void A_ticket_that_says_little_is_filled_in_and_says_so()
    {
        var resolved = Resolve(Ticket(Least), fileName: "lions front.v2.DST");

        Json(resolved).ShouldBe(
            """
            {"orderNumber":"HL-1042","capStyle":"five-panel","quantity":48,"line":"1","design":"lions front.v2",
            "location":"front","machine":"eight-head","capFrame":"wide-270","framingStation":"gauge-1","ruleBook":"house",
            "seating":{"by":"box","centerBy":"box","offsetRightMm":0},
            "sewOrder":{"mode":"ifBetter","allowExtraColorChanges":0},"technique":"flat","tapeIs":"upright",
            "inspection":"loads","threadWeightWt":40,
            "defaulted":["/capFrame","/design","/framingStation","/inspection","/line","/location","/machine","/ruleBook",
            "/seating/by","/seating/centerBy","/seating/offsetRightMm","/sewOrder/allowExtraColorChanges","/sewOrder/mode",
            "/tapeIs","/technique","/threadWeightWt"]}
            """.ReplaceLineEndings(""));
    }

    [Fact]
    public void What_a_ticket_says_is_kept()
    {
        var resolved = Resolve(Ticket(With(
            """
            "line":"2","location":"back","design":"Crest","machine":"one-head","capFrame":"clamp","framingStation":"gauge-2",
            "ruleBook":"harbor","technique":"foam","tapeIs":"turned","inspection":"aql",
            "seating":{"by":"origin","centerBy":"x","centerXMm":-3.5,"baseAboveBrimMm":20,"offsetRightMm":1},
            "sewOrder":{"mode":"always","allowExtraColorChanges":2}
            """)));

        resolved.Defaulted.ShouldBe(["/threadWeightWt"]);
        (resolved.Line, resolved.Location, resolved.Design).ShouldBe(("2", CapLocation.Back, "Crest"));
        (resolved.Machine, resolved.CapFrame, resolved.FramingStation, resolved.RuleBook).ShouldBe(("one-head", "clamp", "gauge-2", "harbor"));
        (resolved.SeatBy, resolved.CenterBy, resolved.CenterXMm).ShouldBe((SeatingBase.Origin, SeatingCenter.X, -3.5));
        (resolved.BaseAboveBrimMm, resolved.OffsetRightMm).ShouldBe((20, 1));
        (resolved.Technique, resolved.TapeIs, resolved.Inspection).ShouldBe((Technique.Foam, TapeOrientation.Turned, InspectionPlan.Aql));
        (resolved.SewOrderMode, resolved.AllowExtraColorChanges).ShouldBe((SewOrderMode.Always, 2));
    }

    [Fact]
    public void A_style_found_by_its_article_number_is_a_member_filled_in()
    {
        var resolved = Resolve(Ticket(With("\"capSku\":\"K 7\"")), capStyle: "five-panel");

        resolved.CapStyle.ShouldBe("five-panel");
        resolved.Defaulted.ShouldContain("/capStyle");
    }

    [Fact]
    public void An_article_number_that_no_style_carries_leaves_the_style_open()
    {
        var resolved = Resolve(Ticket(With("\"capSku\":\"K 7\"")), capStyle: null);

        resolved.CapStyle.ShouldBeNull();
        resolved.Defaulted.ShouldNotContain("/capStyle");
        Json(resolved).ShouldNotContain("capStyle");
    }

    [Theory]
    [InlineData("lions.dst", "lions")]
    [InlineData("lions", "lions")]
    [InlineData("in/2026\\lions.v2.dst", "lions.v2")]
    [InlineData(" li\u0007ons .dst", "lions")]
    [InlineData(".dst", "HL-1042")]
    [InlineData("in/", "HL-1042")]
    [InlineData("", "HL-1042")]
    [InlineData(null, "HL-1042")]
    public void The_file_names_a_design_that_the_ticket_does_not_name(string? fileName, string design)
    {
        Resolve(Ticket(Least), fileName: fileName).Design.ShouldBe(design);
    }

    [Fact]
    public void A_file_name_of_any_kind_gives_a_design_that_can_be_stored()
    {
        Gen.String.Sample(fileName =>
        {
            var resolved = Resolve(Ticket(Least), fileName: fileName);
            return ResolvedTicketReader.Read(Bytes(resolved)).Design == resolved.Design;
        });
        Resolve(Ticket(Least), fileName: new string('x', 300) + ".dst").Design.ShouldBe(new string('x', 120));
    }

    [Fact]
    public void A_stored_ticket_reads_back_as_the_same()
    {
        Gen.Select(AnyTicket.WithAnything, Gen.Bool, Gen.Int[20, 100]).Sample(
            (ticket, found, weight) =>
            {
                var resolved = TicketResolver.Resolve(
                    ticket, Shop with { ThreadWeightWt = weight }, found ? "six-panel" : null, "wide-270", "crest.dst");
                return Same(resolved, ResolvedTicketReader.Read(Bytes(resolved)));
            },
            iter: 1_000);
    }

    [Fact]
    public void Writing_a_stored_ticket_again_gives_the_same_bytes()
    {
        AnyTicket.WithAnything.Sample(ticket =>
        {
            var bytes = Bytes(Resolve(ticket));
            return bytes.AsSpan().SequenceEqual(Bytes(ResolvedTicketReader.Read(bytes)));
        });
    }

    [Fact]
    public void Defaulted_members_are_sorted() =>
        AnyTicket.WithAnything.Sample(ticket =>
        {
            var defaulted = Resolve(ticket).Defaulted;
            return defaulted.SequenceEqual(defaulted.Order(StringComparer.Ordinal));
        });

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData(Least)]
    public void What_was_not_stored_by_us_is_an_exception(string json)
    {
        Should.Throw<FormatException>(() => ResolvedTicketReader.Read(Encoding.UTF8.GetBytes(json)))
            .Message.ShouldStartWith("A stored ticket cannot be read: ");
    }

    private static ResolvedTicket Resolve(Ticket ticket, string? capStyle = null, string? fileName = null) =>
        TicketResolver.Resolve(ticket, Shop, capStyle, "wide-270", fileName);

    private static bool Same(ResolvedTicket a, ResolvedTicket b) =>
        AnyTicket.Same(a.Received with { Echo = null }, b.Received)
        && a.Defaulted.SequenceEqual(b.Defaulted)
        && a == b with { Received = a.Received, Defaulted = a.Defaulted };

    private static string Json(ResolvedTicket resolved) => Encoding.UTF8.GetString(Bytes(resolved));

    private static byte[] Bytes(ResolvedTicket resolved)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes))
            ResolvedTicketWriter.Write(writer, resolved);
        return bytes.WrittenSpan.ToArray();
    }
}
