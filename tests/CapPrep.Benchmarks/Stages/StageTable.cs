using System.Diagnostics;
using System.Globalization;
using System.Text;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.TestKit.Preparations;

namespace CapPrep.Benchmarks.Stages;

/// <summary>
/// Where the time of one preparation goes, in milliseconds of one warm thread: the least of several runs. Stages are run
/// one after the other, each on what the ones before it made.
/// </summary>
internal static class StageTable
{
    private const int Runs = 5;

    internal static int Run(string[] options)
    {
        var sizes = options.Length > 0 ? [.. options.Select(size => int.Parse(size, CultureInfo.InvariantCulture))] : new[] { 10_000, 100_000 };
        foreach (var size in sizes)
            Print($"{size} stitches", Tiles.Of(size));
        Console.WriteLine();
        double[] totals = [.. new[] { 1, 2, 4, 8 }.Select(copies => Print($"four designs x {copies}", Tiles.Copies(copies)))];
        var growth = Math.Log(totals[^1] / totals[0]) / Math.Log(8);
        Console.WriteLine(Line($"growth from 1 to 8 copies: n^{growth:0.00}"));
        return 0;
    }

    private static double Print(string name, byte[] tape)
    {
        var least = new SortedDictionary<string, double>(StringComparer.Ordinal);
        for (var run = 0; run < Runs; run++)
        {
            foreach (var (stage, time) in Measure(tape))
                least[stage] = Math.Min(time, least.GetValueOrDefault(stage, double.MaxValue));
        }

        Console.WriteLine(Line($"{name}: {Facts(tape)}"));
        foreach (var (stage, time) in least)
            Console.WriteLine(Line($"  {stage[2..],-34}{time,9:0.0} ms"));
        return least["9 whole engine"];
    }

    private static string Facts(byte[] tape)
    {
        var subject = SubjectOf(RequestFor(tape));
        return Line($"{subject.Stitches.Count} penetrations, {subject.Reading.Elements.Count} elements, {subject.Stitches.Blocks} blocks{string.Concat(subject.Reading.Limits.Select(limit => $", {limit}"))}");
    }

    private static IEnumerable<(string Stage, double Milliseconds)> Measure(byte[] tape)
    {
        var request = RequestFor(tape);
        var sheets = FourSheets.Of(request.Setup.Style!, request.Setup.Frame);
        request = request with { Setup = request.Setup with { Sheets = sheets } };
        var subject = SubjectOf(request);
        yield return Timed("1 pieces and elements", () => subject.Reading);
        yield return Timed("2 text lines", () => subject.TextLines);
        yield return Timed("3 what lies on what", () => subject.Ground);
        ShiftModel? shift = null;
        yield return Timed("4 sheets", () => shift = ShiftModel.Of(subject));
        SewOrder? order = null;
        yield return Timed("5 order and trade-offs", () => order = subject.Reading.OrderMayChange ? SewOrderPlanner.Plan(OrderRequests.For(subject, subject.Stitches, shift)) : null);
        yield return Timed("6 writing and loss check", () => order is { IsChanged: true } && SewTape.CanWrite(subject) ? SewTape.InOrder(subject, order.Plan, "1") : null);
        yield return Timed("7 checks", () => Inspector.Inspect(subject.With(order?.ReceivedRules)));
        yield return Timed("9 whole engine", () => CapPrepper.Prepare(request));
    }

    private static (string Stage, double Milliseconds) Timed(string stage, Func<object?> work)
    {
        var began = Stopwatch.GetTimestamp();
        GC.KeepAlive(work());
        return (stage, Stopwatch.GetElapsedTime(began).TotalMilliseconds);
    }

    private static Subject SubjectOf(PrepareRequest request)
    {
        var stitches = StitchSequence.Of(request.Tape, request.Setup.Machine.Tape.TrimCount);
        return new(request.Tape, stitches, request.Ticket, request.Setup, Seater.Seat(stitches, request.Ticket, request.Setup));
    }

    private static PrepareRequest RequestFor(byte[] tape)
    {
        var ticket = TicketReader.Read(Encoding.UTF8.GetBytes("""{"orderNumber":"HL-2001","capStyle":"six-panel-structured-mid","quantity":48}"""));
        return StarterShop.Request(tape, ticket.Value!);
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
