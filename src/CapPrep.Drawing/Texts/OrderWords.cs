using System.Globalization;
using CapPrep.Engine;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Drawing.Texts;

/// <summary>The received and the proposed sew order in words and figures.</summary>
internal sealed class OrderWords(SheetWords words, Preparation preparation)
{
    private readonly SewOrder _order = preparation.Order!;

    private bool IsUsed => _order.Used == UsedOrder.Proposed;

    public string Received => words["orders.received"];

    /// <summary>Says whether anybody sews it.</summary>
    public string Proposed => words[!IsUsed ? "orders.notUsed" : preparation.Verdict.Sews() ? "orders.new" : "orders.onHold"];

    public IReadOnlyList<string> ReceivedFigures => Figures(_order.Received);

    /// <summary>With the time it takes more or less than the received one.</summary>
    public IReadOnlyList<string> ProposedFigures => [.. Figures(_order.Proposed), Time(), .. Cloth()];

    /// <summary>Null when it is used.</summary>
    public string? WhyNot => IsUsed ? null : words.Say("orders.because", ("why", _order.KeptBecause));

    /// <summary>The biggest moves, as many as the room takes, and how many more there are; the first one always.</summary>
    /// <param name="fits">The line has room.</param>
    public string Moves(Predicate<string> fits)
    {
        var moves = MoveRun.Of(_order.Moves, preparation.Reading.Elements);
        for (var told = moves.Count; told > 1; told--)
        {
            var line = Moves(moves, told);
            if (fits(line))
                return line;
        }

        return Moves(moves, Math.Min(1, moves.Count));
    }

    private string Moves(IReadOnlyList<MoveRun> moves, int told)
    {
        var left = moves.Skip(told).Sum(run => run.Count);
        var more = left == 0 ? [] : new[] { words.Say("orders.more", ("count", Number(left))) };
        var because = moves.Take(told).GroupBy(run => run.Because).Select(runs => words.Say(
            "orders.moves", ("because", Capital(runs.Key)), ("moves", string.Join(", ", runs.Select(Say)))));
        return string.Join(' ', [.. because, .. more]);
    }

    private string Say(MoveRun run) => words.Say(
        (run.To < run.From ? "orders.earlier" : "orders.later") + (run.Count == 1 ? "One" : ""),
        ("from", Number(run.From + 1)),
        ("fromLast", Number(run.From + run.Count)),
        ("to", Number(run.To + 1)),
        ("toLast", Number(run.To + run.Count)));

    private IReadOnlyList<string> Figures(OrderFigures figures) =>
    [
        words.Say("orders.wrongWay", ("percent", (100 * figures.Shares.OrderIndex).ToString("0", CultureInfo.InvariantCulture))),
        Counted("orders.trims", figures.Trims),
        Counted("orders.colorChanges", figures.ColorChanges),
    ];

    private string Counted(string key, int count) => words.Say(count == 1 ? key + "One" : key, ("count", Number(count)));

    private string Time() => _order.TradeOffs.FirstOrDefault(row => row.Chosen)?.ExtraMinutes is { } minutes && minutes != 0
        ? words.Say("orders.minutes", ("minutes", minutes.ToString("+0.0;-0.0", CultureInfo.InvariantCulture)))
        : words["orders.sameTime"];

    private IEnumerable<string> Cloth() => preparation.Shift is { DriftRatio: var ratio } && Math.Round(100 * ratio) != 100
        ? [words.Say("orders.cloth", ("percent", (100 * ratio).ToString("0", CultureInfo.InvariantCulture)))]
        : [];

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
