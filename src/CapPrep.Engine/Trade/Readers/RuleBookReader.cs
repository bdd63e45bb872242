using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

internal static class RuleBookReader
{
    internal static RuleBook? Read(ObjectReader reader, HouseBook house)
    {
        reader.Require("id", "name");
        var rules = reader.Object("rules", inner => Rules(inner, house, []));
        return new()
        {
            Id = reader.Id("id") ?? "",
            Name = reader.Text("name", 80) ?? "",
            BasedOn = reader.Word("basedOn", HouseBook.BookId) ?? HouseBook.BookId,
            SewOrder = reader.Object("sewOrder", SewOrder),
            Rules = rules ?? [],
            Overrides = reader.Objects("overrides", 0, 500, inner => Override(inner, house, rules ?? [])) ?? [],
        };
    }

    internal static OrderSettings? SewOrder(ObjectReader reader) => new()
    {
        ExtraColorChanges = reader.Integer("extraColorChanges", 0, 20),
        ExtraTrims = reader.Integer("extraTrims", 0, 200),
        StartEndAtBottomCenter = reader.Flag("startEndAtBottomCenter"),
        BetterBy = reader.Number("betterBy", 0, 1),
    };

    private static IReadOnlyList<RuleChange> Rules(ObjectReader reader, HouseBook house, IReadOnlyList<RuleChange> before)
    {
        var changes = new List<RuleChange>();
        foreach (var name in reader.Names)
        {
            if (house.Find(name) is not { } row)
                UnknownRule(reader, name, house);
            else if (reader.Object(name, inner => RuleChangeReader.Read(inner, row, before.FirstOrDefault(change => change.Rule == name))) is { } change)
                changes.Add(change);
        }

        return changes;
    }

    private static void UnknownRule(ObjectReader reader, string name, HouseBook house)
    {
        reader.Element(name);
        reader.Faults.NotAllowed(
            reader.PointerTo(name),
            ViolationCodes.UnknownId,
            "There is no such rule.",
            [.. house.Rows.Select(row => row.Rule).Order(StringComparer.Ordinal)]);
    }

    private static RuleOverride? Override(ObjectReader reader, HouseBook house, IReadOnlyList<RuleChange> before)
    {
        reader.Require("when", "rules");
        var when = reader.Object("when", When);
        return new()
        {
            Customer = when?.Customer,
            CapStyle = when?.CapStyle,
            Location = when?.Location,
            Rules = reader.Object("rules", inner => Rules(inner, house, before)) ?? [],
            Because = reader.Text("because", 400),
        };
    }

    private static Condition? When(ObjectReader reader)
    {
        var condition = new Condition(
            reader.Id("customer"),
            reader.Id("capStyle"),
            reader.Choice("location", Words<CapLocation>.Standard));
        if (reader.Names.Count == 0)
            reader.Faults.Add(reader.Pointer, ViolationCodes.Required, "An override names a customer, a cap style or a location.");
        return condition;
    }

    private sealed record Condition(string? Customer, string? CapStyle, CapLocation? Location);
}
