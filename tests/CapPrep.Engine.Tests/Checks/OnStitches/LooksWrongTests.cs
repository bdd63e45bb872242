using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnLetters;
using CapPrep.Engine.Tests.Checks.OnTechnique;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Good work that looks wrong, at which no rule about stitches warns, and the same with one thing wrong.</summary>
public sealed class LooksWrongTests
{
    [Theory]
    [InlineData(9, null)]
    [InlineData(2.5, "stitch.crowded")]
    public void Foam_letters_are_wide_and_dense_and_narrow_ones_are_flat_work(double widthMm, string? twin) => Warns(FoamDrafts.Said(
        twin is null ? Technique.Foam : Technique.Flat,
        draft => draft.Sew(new FoamDrafts.Bar(0, 0) { Width = widthMm }).Tie(new(0, 100)).Trim(new(250, 0)).Stitch(new(250, 0)).Tie(new(250, 100))
            .Sew(new FoamDrafts.Bar(25, 0) { Width = widthMm }))).ShouldBe(Told(twin));

    /// <summary>The highlight lies on both.</summary>
    [Theory]
    [InlineData("#F0C040", null)]
    [InlineData("#C04020", "stitch.cover")]
    public void Two_open_fills_of_two_colors_blend(string second, string? twin) => Warns(RuleCases.Drafted(draft => Tied(Tied(draft, 0), 110)
        .Move(new(150, 50)).Stitch(new(150, 50)).Tie(new(150, 100)).Sew(Column.Upright(new(150, 50), 30, 60))) with
    {
        Ticket = Job.Clean.Ticket with
        {
            Threads = [Thread(1, "#C04020"), Thread(2, second), Thread(3, "#FFFFFF")],
        },
    }).ShouldBe(Told(twin));

    [Theory]
    [InlineData(LetterWork.Running, null)]
    [InlineData(LetterWork.Satin, "stitch.column-narrow")]
    public void Letters_of_4_mm_are_sewn_in_one_line(LetterWork work, string? twin) =>
        Warns(Lettered.Of(new TextToSew("VILLA") { XHeight = 40, StrokeWidth = 7, Work = work })).ShouldBe(Told(twin));

    [Theory]
    [InlineData(60, null)]
    [InlineData(40, "stitch.column-narrow")]
    public void Letters_of_4_mm_in_fine_thread_have_thin_strokes(int weight, string? twin) =>
        Warns(Lettered.Of(new TextToSew("VILLA") { XHeight = 40, StrokeWidth = 8 }) with
        {
            Job = Job.Clean with { Ticket = Job.Clean.Ticket with { Threads = [new TicketThread { Block = 1, WeightWt = weight }] } },
        }).ShouldBe(Told(twin));

    /// <summary>A stem that tapers at both ends, on a serif at its foot, and a bow with short stitches inside.</summary>
    [Theory]
    [InlineData(15, null)]
    [InlineData(8, "stitch.column-narrow")]
    public void Serif_letters_taper_to_tips(int stroke, string? twin) => Warns(RuleCases.Drafted(draft => draft
        .Sew(new Column(new([new(-14, 0), new(14, 0)]), new([new(-14, 8), new(14, 8)])) { UnderlayStitch = 0 })
        .Sew(new Column(
            new([new(0, 4), new(0, 30), new(0, 90), new(0, 118)]),
            new([new(3, 4), new(stroke, 30), new(stroke, 90), new(3, 118)])))
        .Tie(new(0, 0)).Trim(new(60, 0)).Stitch(new(60, 0)).Tie(new(60, 50))
        .Sew(new Column(Arc(60 + stroke, 45 + stroke), Arc(60 + stroke, 45))))).ShouldBe(Told(twin));

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, "stitch.no-tie")]
    public void A_tape_without_ties_is_for_a_machine_that_ties(bool addsTies, string? twin)
    {
        var draft = new Draft().Move(new(-100, -50)).Sew(Column.Upright(new(-100, -50), 30, 100) with { UnderlayStitch = 30 })
            .Trim(new(70, -50)).Sew(Column.Upright(new(70, -50), 30, 100) with { UnderlayStitch = 30 });

        Warns(Job.Clean with
        {
            Tape = Stitched.Read(draft.ToBytes("TEST").WithoutEnd()),
            Machine = Job.Clean.Machine with { AddsTies = addsTies },
        }).ShouldBe(Told(twin));
    }

    private static Draft Tied(Draft draft, int left) => draft.Move(new(left, 0)).Stitch(new(left, 0)).Tie(new(left + 100, 100))
        .Sew(Fill.Of(new(left, 0, left + 200, 150)) with { RowPitch = 8 }).Tie(new(left, 0)).ColorStop();

    private static TicketThread Thread(int block, string color) => new() { Block = block, Color = color };

    /// <summary>Most of a ring, sewn from the foot to the left and round.</summary>
    private static Way Arc(int centerX, int radius) => new([.. Enumerable.Range(0, 19).Select(k => new TapePoint(
        centerX - (int)Math.Round(radius * Math.Sin(k * Math.PI / 12)), 60 - (int)Math.Round(radius * Math.Cos(k * Math.PI / 12))))]);

    private static string[] Told(string? twin) => twin is null ? [] : [twin];

    private static string[] Warns(Job job) => Warns(job.Prepare().Findings);

    private static string[] Warns(Lettered lettered) => Warns(Inspector.Inspect(lettered.Subject()));

    private static string[] Warns(IEnumerable<Finding> findings) =>
        [.. findings.Where(finding => finding.Severity >= Severity.Warn && finding.Rule.StartsWith("stitch.", StringComparison.Ordinal)).Select(finding => finding.Rule)];
}
