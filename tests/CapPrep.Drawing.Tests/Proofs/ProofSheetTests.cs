using CapPrep.Engine;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;
using CapPrep.Engine.Verdicts;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Proofs;

public class ProofSheetTests
{
    [Fact]
    public void The_proof_of_a_design_that_sews() => Golden.Compare(ProofSheet.Lay(Some.Job(), Some.Sewn()), "proof");

    [Fact]
    public void The_proof_of_a_returned_design() => Golden.Compare(ProofSheet.Lay(Some.Job(), Some.Held()), "proof-held");

    [Fact]
    public void The_proof_without_a_cap_style() => Golden.Compare(ProofSheet.Lay(Some.Job(), Some.WithoutStyle()), "proof-no-style");

    [Fact]
    public void What_could_not_be_read_for_sure_is_hatched_inside_its_box_and_said()
    {
        var sewn = Some.Sewn();
        var box = new BoxMm(-10, 20, 10, 30);
        var doubtful = sewn with { Doubtful = [new DoubtfulPiece(1, StitchClass.Running, box, new StitchRange(1, 40))] };

        var sheet = ProofSheet.Lay(Some.Job(), doubtful);

        var marks = sheet.Marks.ToList();
        var hatch = marks.FindIndex(mark => mark is GroupStart { Title: "Could not be read for sure" });
        var lines = marks[hatch + 1].ShouldBeOfType<LinesMark>().Lines;
        lines.Count.ShouldBeGreaterThan(10);
        lines.ShouldAllBe(line => line[0].X + line[0].Y == line[1].X + line[1].Y);
        var xs = lines.SelectMany(line => line).Select(point => point.X).ToArray();
        (xs.Max() - xs.Min()).ShouldBeLessThanOrEqualTo(2000);
        Texts(doubtful).ShouldContain(text => text.Contains("Hatched: could not be read for sure."));
        Texts(sewn).ShouldNotContain(text => text.Contains("Hatched"));
    }

    [Fact]
    public void Height_above_the_brim_is_drawn_to_scale()
    {
        var sheet = ProofSheet.Lay(Some.Job(), Some.Sewn());
        var upright = sheet.Marks.OfType<LinesMark>()
            .SelectMany(mark => mark.Lines)
            .Where(line => line.Count == 2 && line[0].X == line[1].X)
            .Select(line => Math.Abs(line[0].Y - line[1].Y));
        upright.ShouldContain(1300);
        sheet.Marks.OfType<TextMark>().ShouldContain(text => text.Text == "13 mm");
    }

    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void A_usual_design_has_its_true_size(Paper paper) =>
        ProofSheet.Lay(Some.Job() with { Paper = paper }, Some.Sewn()).Marks.OfType<TextMark>()
            .ShouldContain(text => text.Text.StartsWith("True size"));

    [Fact]
    public void Every_severity_is_said_in_a_word()
    {
        var held = Some.Held();
        var note = Some.Quirk() with { Remedy = new RuleRemedy(Actor.Digitizer, "Close the tape with an end record.") };
        var texts = Texts(held with { Findings = [.. held.Findings.Where(finding => finding.Severity != Severity.Note), note] });
        texts.ShouldContain(text => text.StartsWith("HOLD") && text.EndsWith('1'));
        texts.ShouldContain(text => text.StartsWith("WARN") && text.EndsWith("2, 3"));
        texts.ShouldContain("NOTE");
    }

    [Fact]
    public void A_note_that_nobody_has_to_act_on_stays_in_the_result()
    {
        Some.Quirk().Remedy.ShouldBeNull();

        Texts(Some.Held()).ShouldNotContain(text => text.Contains("end record", StringComparison.Ordinal));
    }

    private static string[] Texts(Preparation preparation) =>
        [.. ProofSheet.Lay(Some.Job(), preparation).Marks.OfType<TextMark>().Select(text => text.Text)];

    [Fact]
    public void Numbers_on_the_drawing_do_not_cover_one_another()
    {
        var held = Some.Held();
        var place = held.Findings[0].Places[0];
        var findings = Enumerable.Range(1, 6).Select(mark => held.Findings[0] with { Number = mark, Places = [place with { Mark = mark }] });
        var sheet = ProofSheet.Lay(Some.Job(), held with { Findings = [.. findings] });
        var tags = sheet.Marks.OfType<TextMark>().Where(text => text.Ink == Ink.White && text.Text.Length == 1).Select(text => text.Box).ToArray();
        tags.Length.ShouldBe(6);
        for (var i = 0; i < tags.Length; i++)
            tags.Where((_, other) => other != i).ShouldAllBe(other => !other.Overlaps(tags[i]));
    }

    [Fact]
    public void Places_that_overlap_share_a_box_with_all_their_numbers()
    {
        var held = Some.Held();
        var places = Enumerable.Range(1, 4).Select(mark => held.Findings[0].Places[0] with { Mark = mark }).ToArray();
        var sheet = ProofSheet.Lay(Some.Job(), held with { Findings = [held.Findings[0] with { Places = places }] });
        sheet.Marks.OfType<TextMark>().ShouldContain(text => text.Text == "2 3 4");
        sheet.Marks.OfType<BoxMark>().Count(box => box.Stroke is { Width: 90 }).ShouldBe(1);
    }

    [Fact]
    public void Only_places_told_in_the_margin_are_drawn()
    {
        var held = Some.Held();
        var findings = Enumerable.Range(1, 9).Select(number => held.Findings[0] with
        {
            Remedy = null,
            Places = [held.Findings[0].Places[0] with { Mark = number }],
        });
        var texts = ProofSheet.Lay(Some.Job(), held with { Findings = [.. findings] }).Marks.OfType<TextMark>().ToArray();
        texts.ShouldContain(text => text.Text == "7" && text.Ink == Ink.White);
        texts.ShouldNotContain(text => text.Text == "8" && text.Ink == Ink.White);
        texts.ShouldContain(text => text.Text == "2 more in the result document.");
    }

    [Fact]
    public void A_design_far_too_large_is_drawn_smaller_and_says_so()
    {
        var pen = new StitchPen().Stitch(0, 0).Stitch(9000, 9000).Stitch(-9000, 4000);
        var sheet = ProofSheet.Lay(Some.Job(), Some.Sewn(pen.Tape()));
        sheet.Marks.OfType<TextMark>().ShouldContain(text => text.Text.StartsWith("Drawn at 1:"));
    }

    [Fact]
    public void Blocks_without_a_thread_are_gray_steps()
    {
        var sewn = Some.Sewn();
        var ticket = sewn.Ticket with { Received = sewn.Ticket.Received with { Threads = null } };
        var sheet = ProofSheet.Lay(Some.Job(), sewn with { Ticket = ticket });
        sheet.Marks.OfType<TextMark>().Count(text => text.Text.StartsWith("Gray ")).ShouldBe(3);
    }

    [Fact]
    public void A_turned_tape_is_drawn_as_it_will_lie_on_the_cap()
    {
        var sewn = Some.Sewn();
        var turned = sewn with { Seating = sewn.Seating! with { TapeIsTurned = true, Offset = new TapePoint(0, 350) } };
        SheetFile.Write(ProofSheet.Lay(Some.Job(), turned)).ShouldNotBe(SheetFile.Write(ProofSheet.Lay(Some.Job(), sewn)));
    }
}
