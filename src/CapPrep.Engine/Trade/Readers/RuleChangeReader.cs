using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>What a book changes about one built-in rule, checked against that rule.</summary>
internal static class RuleChangeReader
{
    private const string OffWord = "off";

    /// <param name="before">What the book already changes about this rule; null outside overrides.</param>
    internal static RuleChange? Read(ObjectReader reader, RuleRow row, RuleChange? before)
    {
        CheckUnit(reader, row);
        var limits = reader.Object("limits", inner => Limits(inner, row)) ?? [];
        var change = new RuleChange(row.Rule) { Limits = limits, Off = reader.Flag("off") };
        if (reader.Names.Count == 0)
            reader.Faults.Add(reader.Pointer, ViolationCodes.Required, "A change names limits, or switches the rule off or on.");
        if (change.Off == true && row.HoldStaysAtLeastWarn)
            reader.Contradicts("off", "This rule keeps needles, caps or people from harm and cannot be switched off.");
        CheckMerged(reader, row, before, change);
        return change;
    }

    private static void CheckUnit(ObjectReader reader, RuleRow row)
    {
        if (reader.Text("unit", 20) is { } unit && unit != row.Unit)
            reader.Faults.NotAllowed(reader.PointerTo("unit"), ViolationCodes.Contradicts, $"This rule is measured in {row.Unit}.", [row.Unit]);
    }

    private static IReadOnlyList<LimitChange> Limits(ObjectReader reader, RuleRow row) =>
        [.. Enum.GetValues<Severity>().Select(level => Limit(reader, row, level)).OfType<LimitChange>()];

    private static LimitChange? Limit(ObjectReader reader, RuleRow row, Severity level)
    {
        var name = Words<Severity>.Standard.Of(level);
        if (reader.Element(name) is not { } element)
            return null;
        var word = element.ValueKind == JsonValueKind.String ? reader.Word(name, OffWord, HouseBookReader.AlwaysWord) : null;
        if (word == OffWord)
            return new(level, null, Off: true);
        if (level == Severity.Hold && row.HoldAsks == Asks.Nothing)
            reader.Contradicts(name, "This rule never holds: nobody could do anything about it.");
        return element.ValueKind == JsonValueKind.String ? Always(reader, name, row, level, word) : Numeric(reader, name, row, level);
    }

    private static LimitChange? Always(ObjectReader reader, string name, RuleRow row, Severity level, string? word)
    {
        if (word is null)
            return null;
        if (row.Is == LimitIs.None)
            return new(level, null, Off: false);
        reader.Contradicts(name, $"This rule needs a number here, in {row.Unit}.");
        return null;
    }

    private static LimitChange? Numeric(ObjectReader reader, string name, RuleRow row, Severity level)
    {
        if (reader.Number(name, -1000, 1_000_000) is not { } value)
            return null;
        if (row.Is != LimitIs.None)
            return new(level, value, Off: false);
        reader.Contradicts(name, "This rule has no number to compare: write \"always\" or \"off\".");
        return null;
    }

    private static void CheckMerged(ObjectReader reader, RuleRow row, RuleChange? before, RuleChange change)
    {
        var merged = new RuleChange?[] { before, change }.OfType<RuleChange>().Aggregate(row.Limits, RuleMerge.Apply);
        if (InWrongOrder(row, merged) is { } wrong)
            reader.Contradicts("limits", wrong);
        if (row.HoldStaysAtLeastWarn && RuleMerge.IsLoosened(row, merged))
            reader.Contradicts("limits", "What holds in the built-in book may at most be made a warn: this rule keeps needles, caps or people from harm.");
    }

    /// <summary>Only numbers can be compared here; a value from the catalog is known with the ticket.</summary>
    private static string? InWrongOrder(RuleRow row, IReadOnlyList<RuleLimit> limits)
    {
        var numbers = limits.Where(limit => limit.Value is not null).OrderBy(limit => limit.Level).ToArray();
        return numbers.Zip(numbers.Skip(1))
            .Where(pair => RuleMerge.IsMilder(row.Is, pair.First.Value!.Value, pair.Second.Value!.Value))
            .Select(pair => $"The {Of(pair.Second)} limit would be passed before the {Of(pair.First)} limit.")
            .FirstOrDefault();
    }

    private static string Of(RuleLimit limit) => Words<Severity>.Standard.Of(limit.Level);
}
