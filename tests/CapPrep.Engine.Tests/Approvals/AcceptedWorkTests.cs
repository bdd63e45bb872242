using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tests.Sequence;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Approvals;

/// <summary>What a person accepted counts for nothing, and nothing else does.</summary>
public sealed class AcceptedWorkTests
{
    private const string Long = "stitch.long";

    /// <summary>Two lines, cut apart, each with a stitch that is longer than a machine should sew.</summary>
    private static readonly Job TwoLongStitches = Job.Clean with { Tape = Lines(110, 105) };

    [Fact]
    public void An_accepted_finding_leaves_the_list_and_stands_behind_it_with_its_name()
    {
        var before = TwoLongStitches.Prepare();
        var word = Word(before, element: null);

        var after = Prepare(TwoLongStitches, word);

        after.Findings.Select(finding => finding.Rule).ShouldBe(before.Findings.Select(finding => finding.Rule).Where(rule => rule != Long));
        var accepted = after.Accepted.ShouldHaveSingleItem();
        accepted.By.ShouldBe([word]);
        accepted.Finding.Rule.ShouldBe(Long);
        accepted.Finding.Number.ShouldBe(after.Findings.Count + 1);
        before.Brief!.Points.Select(point => point.Rule).ShouldContain(Long);
        (after.Brief?.Points ?? []).Select(point => point.Rule).ShouldNotContain(Long);
        after.Summary.Lead.ShouldNotContain(word.Seen.Message[..20]);
    }

    [Fact]
    public void Accepted_for_one_element_the_other_one_is_still_found_with_its_own_figures()
    {
        var before = TwoLongStitches.Prepare();

        var after = Prepare(TwoLongStitches, Word(before, element: 1));

        var left = after.Findings.Single(finding => finding.Rule == Long);
        left.Count.ShouldBe(1);
        left.Measured!.Value.ShouldBe(10.5);
        left.Places.ShouldHaveSingleItem().Elements.ShouldBe([2]);
        after.Accepted.ShouldHaveSingleItem().Finding.Places.ShouldHaveSingleItem().Elements.ShouldBe([1]);
    }

    [Fact]
    public void Accepted_for_each_element_nothing_is_left()
    {
        var before = TwoLongStitches.Prepare();

        var after = Prepare(TwoLongStitches, Word(before, element: 1), Word(before, element: 2));

        after.Findings.ShouldNotContain(finding => finding.Rule == Long);
        after.Accepted.ShouldHaveSingleItem().By.Count.ShouldBe(2);
    }

    [Fact]
    public void An_element_that_is_read_otherwise_now_is_another_one()
    {
        var word = Word(TwoLongStitches.Prepare(), element: 1);

        var after = Prepare(TwoLongStitches, word with { Element = word.Element! with { Stitches = new(1, 3) } });

        after.Accepted.ShouldBeEmpty();
        after.Findings.Single(finding => finding.Rule == Long).Count.ShouldBe(2);
    }

    [Fact]
    public void A_moved_limit_ends_it_and_a_moved_limit_of_another_level_does_not()
    {
        var word = Word(TwoLongStitches.Prepare(), element: null);

        Prepare(TwoLongStitches with { Book = With(Severity.Warn, 9) }, word).Accepted.ShouldBeEmpty();
        Prepare(TwoLongStitches with { Book = With(Severity.Note, 6) }, word).Accepted.ShouldNotBeEmpty();
    }

    [Fact]
    public void Something_worse_than_what_was_seen_is_not_accepted_and_something_better_is()
    {
        var word = Word(TwoLongStitches.Prepare(), element: null);

        Prepare(TwoLongStitches with { Tape = Lines(112, 105) }, word).Accepted.ShouldBeEmpty();
        Prepare(TwoLongStitches with { Tape = Lines(108, 105) }, word).Accepted.ShouldNotBeEmpty();
    }

    [Fact]
    public void A_word_on_another_rule_says_nothing() =>
        Prepare(TwoLongStitches, Word(TwoLongStitches.Prepare(), null) with { Rule = "stitch.short" }).Accepted.ShouldBeEmpty();

    [Fact]
    public void What_is_not_measured_is_accepted_as_long_as_it_says_the_same()
    {
        var job = Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = 40 } };
        var finding = job.Finding("ticket.quantity")!;
        var word = Word(finding, null) with { Seen = new(finding.Severity, finding.Limit.Value, finding.Measured?.Value, finding.Message) };

        Prepare(job, word).Accepted.ShouldNotBeEmpty();
        Prepare(job with { Ticket = job.Ticket with { Blanks = 39 } }, word).Accepted.ShouldBeEmpty();
    }

    [Fact]
    public void What_our_order_solves_needs_no_word_and_still_says_why()
    {
        var job = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Top, Sewn.Middle, Sewn.Base) };
        var before = job.Prepare();
        var solved = before.Findings.First(finding => finding.State == FindingState.Solved);

        var after = Prepare(job, Word(solved, null));

        after.Accepted.ShouldBeEmpty();
        after.VerdictReasons.ShouldBe(before.VerdictReasons);
    }

    [Theory]
    [InlineData("ticket.size", Severity.Warn, true)]
    [InlineData("place.outside-field", Severity.Hold, true)]
    [InlineData("place.posts", Severity.Hold, true)]
    [InlineData("place.brim-clearance", Severity.Hold, true)]
    [InlineData("place.brim-clearance", Severity.Warn, false)]
    [InlineData("place.too-tall", Severity.Hold, false)]
    [InlineData("stitch.dense", Severity.Hold, false)]
    public void What_hangs_on_the_order_or_may_strike_the_frame_holds_for_one_job(string rule, Severity severity, bool oneJob) =>
        OneJobRules.Holds(rule, severity).ShouldBe(oneJob);

    private static Preparation Prepare(Job job, params Acceptance[] words) => CapPrepper.Prepare(job.Request() with { Acceptances = words });

    private static Acceptance Word(Preparation before, int? element) =>
        Word(before.Findings.Single(finding => finding.Rule == Long), element is { } number ? before.Reading.Elements[number - 1] : null);

    private static Acceptance Word(Finding finding, Element? element) => new()
    {
        Decision = "dec_1",
        Rule = finding.Rule,
        Element = element is null ? null : new(element.Index + 1, new(element.First + 1, element.Last + 1)),
        Seen = new(finding.Severity, finding.Limit.Value, finding.Measured?.Value, finding.Message),
        By = "Marta Quist",
        At = new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero),
    };

    private static RuleBook With(Severity level, double value) => new()
    {
        Id = "harbor",
        Name = "Harbor",
        Rules = [new RuleChange(Long) { Limits = [new LimitChange(level, value, Off: false)] }],
    };

    private static Tape Lines(params int[] steps)
    {
        var draft = new Draft();
        for (var i = 0; i < steps.Length; i++)
        {
            var y = 150 * i;
            if (i > 0)
                draft.Trim(new(-200, y));
            draft.Run(25, [new(-200, y), new(0, y)]).Stitch(new(steps[i], y)).Run(25, [new(steps[i], y), new(300, y)]);
        }

        return draft.ToTape("LONG");
    }
}
