using System.Text;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Losses;

/// <summary>
/// Every fault is planted alone and fails the clauses named beside it and no other. A fault of the plan that the tape
/// follows fails one; a fault of the tape alone is also met where penetrations, stitches or counts are added up, and
/// where both pictures are compared point by point.
/// </summary>
public sealed class PlantedFaultTests
{
    private static readonly IReadOnlyDictionary<string, (string Clauses, Case Case)> Faults = new Dictionary<string, (string, Case)>
    {
        ["an element is missing in plan and tape"] = ("Partition Penetrations Stitches", Case.Right with { Plan = Without(4) }),
        ["two overlapping colors change places"] = ("TopView", Case.Right with
        {
            Plan = Case.PlanOf([2, 1, 0], [3, 4], swapBlocks: true),
            NeedlePlan = Case.Needles((2, 4), (1, 6)),
        }),
        ["an element comes before the one it must follow"] = ("MustFollow", Case.Right with { Plan = Case.Right.Plan with { MustFollow = [(4, 3)] } }),
        ["two needles are exchanged"] = ("Threads", Case.Right with { NeedlePlan = Case.Needles((1, 4), (2, 6)) }),
        ["the whole tape lies one unit aside"] = ("Sequence Penetrations Counts", Case.Right with
        {
            Spoil = moves => moves.Select((move, i) => i == moves.Count - 1 ? move : move with { To = move.To + new TapePoint(1, 0) }),
        }),
        ["the first penetration of an element is doubled"] = ("Sequence Threads Penetrations Stitches TopView Counts", Case.Right with { Spoil = DoubleFirst }),
        ["a float is sewn without its jump"] = ("Sequence", Case.Right with { Spoil = WithoutFloat }),
        ["a stitch without length is lost"] = ("Sequence Penetrations Stitches TopView Counts", Case.Right with { Spoil = WithoutZero }),
        ["a tie lies outside its element"] = ("Ties", Case.Right with { Plan = TieAside() }),
        ["a new cut has no tie"] = ("Ties", Case.Right with { Plan = WithoutTies() }),
        ["two elements are joined across 2 mm"] = ("Sequence Stitches Counts", Case.Right with { Spoil = JoinedAtFirstCut }),
        ["plan and tape join two elements by a stitch of 8 mm"] = ("Stitches", Case.Right with { Plan = JoinedFar() }),
        ["the header announces another count"] = ("Counts", Case.Right with { SpoilFile = WrongHeader }),
        ["an element is sewn backward"] = ("Sequence Stitches", Case.Right with { Spoil = Backward }),
        ["the needle travels outside the field"] = ("Machine", Case.Right with { Spoil = Astray }),
    };

    public static TheoryData<string> Names => [.. Faults.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_planted_fault_fails_the_named_clauses_and_no_other(string fault) =>
        Faults[fault].Case.Failed().ShouldBe(Faults[fault].Clauses);

    [Fact]
    public void The_plan_without_a_fault_passes_and_its_changes_are_counted()
    {
        var result = Case.Right.Check();

        result.Clauses.ShouldAllBe(clause => clause.Passed);
        result.Clauses.Count.ShouldBe(10);
        (result.TiesAdded, result.Dropped, result.NewLinks).ShouldBe((8, 2, 1));
    }

    [Theory]
    [InlineData(false, 0, 0)]
    [InlineData(true, 0, 0)]
    [InlineData(false, 35, -20)]
    [InlineData(true, 35, -20)]
    public void Turned_or_started_elsewhere_it_passes_too(bool turned, int x, int y)
    {
        var settings = Case.Right.Settings with { Turn180 = turned, StartAndEnd = new TapePoint(x, y) };

        (Case.Right with { Settings = settings }).Failed().ShouldBeEmpty();
    }

    [Fact]
    public void Elements_of_one_thread_that_do_not_overlap_may_come_in_any_order() =>
        (Case.Right with { Plan = Case.PlanOf([0, 2, 1], [4, 3]) }).Failed().ShouldBeEmpty();

    private static SewPlan Without(int element)
    {
        var plan = Case.Right.Plan;
        var lost = plan.Spans.Single(span => span.Element == element);
        return plan with
        {
            Spans = [.. plan.Spans.Where(span => span != lost)],
            Steps = [.. plan.Steps.Where(step => step.Element != element)],
            Blocks = [.. plan.Blocks.Select(block => block.Elements.Contains(element) ? block with { Stitches = block.Stitches - (lost.Last - lost.First + 1) } : block)],
        };
    }

    private static SewPlan TieAside()
    {
        var plan = Case.Right.Plan;
        return plan with
        {
            Steps = [.. plan.Steps.Select(step => step.Element == 0
                ? step with { TieOff = [.. step.TieOff.Select((tie, i) => i % 2 == 0 ? tie + new TapePoint(0, 9) : tie)] }
                : step)],
        };
    }

    private static SewPlan WithoutTies()
    {
        var plan = Case.Right.Plan;
        return plan with
        {
            Steps = [.. plan.Steps.Select(step => step.Element == 0 ? step with { TieOff = [] } : step)],
            Blocks = [.. plan.Blocks.Select(block => block.Elements.Contains(0) ? block with { Stitches = block.Stitches - 4 } : block)],
        };
    }

    private static SewPlan JoinedFar()
    {
        var plan = Case.Right.Plan;
        return plan with
        {
            Steps = [.. plan.Steps.Select(step => step.Element == 0 ? step with { Connection = Connection.NewLink } : step)],
        };
    }

    private static IEnumerable<TapeMove> DoubleFirst(IReadOnlyList<TapeMove> moves)
    {
        var first = moves.ToList().FindIndex(move => move.Kind == RecordKind.Stitch);
        return [.. moves.Take(first), moves[first], .. moves.Skip(first)];
    }

    private static IEnumerable<TapeMove> WithoutFloat(IReadOnlyList<TapeMove> moves) => moves.Where((move, i) =>
        !(move.Kind == RecordKind.Jump && i > 0 && i < moves.Count - 1
            && moves[i - 1].Kind == RecordKind.Stitch && moves[i + 1].Kind == RecordKind.Stitch));

    private static IEnumerable<TapeMove> WithoutZero(IReadOnlyList<TapeMove> moves) => moves.Where((move, i) =>
        !(i > 0 && move == moves[i - 1] && move.Kind == RecordKind.Stitch));

    /// <summary>The jump records of the first cut inside a color are left out.</summary>
    private static IEnumerable<TapeMove> JoinedAtFirstCut(IReadOnlyList<TapeMove> moves)
    {
        var first = Enumerable.Range(1, moves.Count - 3).First(i =>
            moves[i - 1].Kind == RecordKind.Stitch && moves.Skip(i).Take(3).All(move => move.Kind == RecordKind.Jump));
        var length = moves.Skip(first).TakeWhile(move => move.Kind == RecordKind.Jump).Count();
        return moves.Take(first).Concat(moves.Skip(first + length));
    }

    private static byte[] WrongHeader(byte[] file)
    {
        var text = Encoding.ASCII.GetString(file, 0, Tape.HeaderBytes);
        var at = text.IndexOf("ST:", StringComparison.Ordinal) + 3;
        return [.. file.Take(at), .. "   9999"u8, .. file.Skip(at + 7)];
    }

    /// <summary>The last element, whose stitches are the last ones of the tape.</summary>
    private static IEnumerable<TapeMove> Backward(IReadOnlyList<TapeMove> moves)
    {
        var end = moves.ToList().FindLastIndex(move => move.Kind == RecordKind.Stitch);
        var first = end;
        while (moves[first - 1].Kind == RecordKind.Stitch)
            first--;
        return [.. moves.Take(first), .. moves.Skip(first).Take(end - first + 1).Reverse(), .. moves.Skip(end + 1)];
    }

    private static IEnumerable<TapeMove> Astray(IReadOnlyList<TapeMove> moves) =>
        [new(RecordKind.Jump, new(0, 410)), .. moves];
}
