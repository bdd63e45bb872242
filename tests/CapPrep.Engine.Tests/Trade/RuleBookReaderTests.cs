using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class RuleBookReaderTests
{
    [Fact]
    public void A_book_holds_what_differs_from_the_house()
    {
        var book = Read("""
            { "id": "harbor", "name": "Harbor", "sewOrder": { "extraTrims": 5 },
              "rules": { "place.off-center": { "limits": { "note": "off", "warn": 1.5 } }, "ticket.threads": { "limits": { "warn": "always" } },
                         "tape.no-end": { "off": true } },
              "overrides": [ { "when": { "location": "back" }, "rules": { "place.too-tall": { "limits": { "warn": 30 } } }, "because": "Low arch." } ] }
            """).Value.ShouldNotBeNull();

        (book.Id, book.Name, book.BasedOn).ShouldBe(("harbor", "Harbor", "house"));
        book.SewOrder.ShouldBe(new OrderSettings { ExtraTrims = 5 });
        book.Rules.Select(rule => rule.Rule).ShouldBe(["place.off-center", "ticket.threads", "tape.no-end"]);
        book.Rules[0].Limits.ShouldBe([new(Severity.Note, null, Off: true), new(Severity.Warn, 1.5, Off: false)]);
        book.Rules[1].Limits.ShouldBe([new(Severity.Warn, null, Off: false)]);
        book.Rules[2].Off.ShouldBe(true);
        (book.Overrides[0].Location, book.Overrides[0].Because).ShouldBe((CapLocation.Back, "Low arch."));
    }

    [Theory]
    [InlineData("""{ "place.too-big": { "off": true } }""", "/rules/place.too-big", ViolationCodes.UnknownId)]
    [InlineData("""{ "place.too-tall": { "limits": { "error": 60 } } }""", "/rules/place.too-tall/limits/error", ViolationCodes.UnknownField)]
    [InlineData("""{ "place.too-tall": { "unit": "inch", "limits": { "warn": 2 } } }""", "/rules/place.too-tall/unit", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.too-tall": { "limits": { "warn": 60, "hold": 55 } } }""", "/rules/place.too-tall/limits", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.off-center": { "limits": { "note": 3 } } }""", "/rules/place.off-center/limits", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.side-seam": { "limits": { "hold": 6 } } }""", "/rules/place.side-seam/limits", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.side-seam": { "limits": { "warn": "soon" } } }""", "/rules/place.side-seam/limits/warn", ViolationCodes.BadFormat)]
    [InlineData("""{ "place.side-seam": { "limits": { "warn": "always" } } }""", "/rules/place.side-seam/limits/warn", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.side-seam": { "limits": { "warn": true } } }""", "/rules/place.side-seam/limits/warn", ViolationCodes.WrongType)]
    [InlineData("""{ "place.side-seam": {} }""", "/rules/place.side-seam", ViolationCodes.Required)]
    [InlineData("""{ "ticket.style": { "limits": { "hold": 3 } } }""", "/rules/ticket.style/limits/hold", ViolationCodes.Contradicts)]
    [InlineData("""{ "tape.no-end": { "limits": { "hold": "always" } } }""", "/rules/tape.no-end/limits/hold", ViolationCodes.Contradicts)]
    [InlineData("""{ "place.off-center": { "limits": { "hold": 5 } } }""", "/rules/place.off-center/limits/hold", ViolationCodes.Contradicts)]
    public void A_wrong_change_is_a_fault_at_its_place(string rules, string pointer, string code) =>
        Read($$"""{ "id": "harbor", "name": "Harbor", "rules": {{rules}} }""").Violations
            .Select(violation => (violation.Pointer, violation.Code)).ShouldBe([(pointer, code)]);

    [Theory]
    [InlineData("place.outside-field", "\"off\": true", "off")]
    [InlineData("place.outside-field", "\"limits\": { \"hold\": \"off\" }", "limits")]
    [InlineData("place.outside-field", "\"limits\": { \"hold\": 5 }", "limits")]
    [InlineData("place.outside-field", "\"limits\": { \"hold\": \"off\", \"warn\": 2 }", "limits")]
    [InlineData("place.travel-outside", "\"off\": true", "off")]
    [InlineData("place.brim-clearance", "\"off\": true", "off")]
    [InlineData("place.brim-clearance", "\"limits\": { \"hold\": \"off\", \"warn\": \"off\" }", "limits")]
    [InlineData("place.posts", "\"limits\": { \"hold\": 6 }", "limits")]
    [InlineData("place.posts", "\"limits\": { \"hold\": \"off\", \"note\": 8 }", "limits")]
    [InlineData("ticket.threads", "\"limits\": { \"hold\": \"off\", \"warn\": \"off\" }", "limits")]
    [InlineData("tape.cut-off", "\"limits\": { \"hold\": 0.05 }", "limits")]
    public void What_keeps_caps_and_needles_whole_is_never_less_than_a_warn(string rule, string change, string at) =>
        Read($$"""{ "id": "harbor", "name": "Harbor", "rules": { "{{rule}}": { {{change}} } } }""").Violations
            .Select(violation => (violation.Pointer, violation.Code)).ShouldBe([($"/rules/{rule}/{at}", ViolationCodes.Contradicts)]);

    [Theory]
    [InlineData("place.outside-field", "\"limits\": { \"hold\": \"off\", \"warn\": 0 }")]
    [InlineData("place.posts", "\"limits\": { \"hold\": 6, \"warn\": 8 }")]
    [InlineData("place.posts", "\"limits\": { \"hold\": 10 }")]
    [InlineData("ticket.threads", "\"limits\": { \"hold\": \"off\" }")]
    [InlineData("place.brim-clearance", "\"limits\": { \"hold\": \"off\" }")]
    public void What_keeps_caps_and_needles_whole_may_be_made_a_warn(string rule, string change) =>
        Read($$"""{ "id": "harbor", "name": "Harbor", "rules": { "{{rule}}": { {{change}} } } }""").Violations.ShouldBeEmpty();

    [Fact]
    public void An_override_is_checked_on_top_of_the_books_own_rules() =>
        Read("""
            { "id": "harbor", "name": "Harbor", "rules": { "place.too-tall": { "limits": { "hold": 60 } } },
              "overrides": [ { "when": { "customer": "harbor-league" }, "rules": { "place.too-tall": { "limits": { "warn": 62 } } } } ] }
            """).Violations.Single().Pointer.ShouldBe("/overrides/0/rules/place.too-tall/limits");

    [Theory]
    [InlineData("""{ "when": {}, "rules": {} }""", "/overrides/0/when", ViolationCodes.Required)]
    [InlineData("""{ "rules": {} }""", "/overrides/0/when", ViolationCodes.Required)]
    [InlineData("""{ "when": { "location": "top" }, "rules": {} }""", "/overrides/0/when/location", ViolationCodes.BadFormat)]
    [InlineData("""{ "when": { "machine": "one-head" }, "rules": {} }""", "/overrides/0/when/machine", ViolationCodes.UnknownField)]
    [InlineData("""{ "when": { "customer": "Harbor" }, "rules": {} }""", "/overrides/0/when/customer", ViolationCodes.BadFormat)]
    public void A_wrong_override_is_a_fault_at_its_place(string over, string pointer, string code) =>
        Read($$"""{ "id": "harbor", "name": "Harbor", "overrides": [ {{over}} ] }""").Violations
            .Select(violation => (violation.Pointer, violation.Code)).ShouldBe([(pointer, code)]);

    [Theory]
    [InlineData("basedOn", "\"mine\"", ViolationCodes.BadFormat)]
    [InlineData("version", "4", ViolationCodes.UnknownField)]
    public void A_wrong_head_is_a_fault_at_its_place(string name, string json, string code) =>
        Read($$"""{ "id": "harbor", "name": "Harbor", "{{name}}": {{json}} }""").Violations
            .Select(violation => (violation.Pointer, violation.Code)).ShouldBe([("/" + name, code)]);

    private static ReadResult<RuleBook> Read(string json) => TradeReader.RuleBook(Edited.Json(json), Embedded.HouseBook);
}
