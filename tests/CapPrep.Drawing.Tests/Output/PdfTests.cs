using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Output;

/// <summary>Our PDF read by poppler.</summary>
public class PdfTests
{
    [Fact]
    public void A_hundred_millimeters_measure_a_hundred_millimeters()
    {
        const int dpi = 2540;
        var pdf = SheetToPdf.Draw(SomeSheet.With(
            new LinesMark([[new(2000, 5000), new(2000, 6000)], [new(12000, 5000), new(12000, 6000)]], new Stroke(10, Ink.Black)),
            new LinesMark([[new(14000, 5000), new(15000, 5000)], [new(14000, 15000), new(15000, 15000)]], new Stroke(10, Ink.Black))));
        var across = Poppler.Gray(pdf, dpi, 1900, 5500, 10300, 1);
        (Center(across, 10000, 300) - Center(across, 0, 300)).ShouldBe(10000, 10);
        var down = Poppler.Gray(pdf, dpi, 14500, 4900, 1, 10300);
        (Center(down with { Width = down.Height, Height = 1 }, 10000, 300) - Center(down with { Width = down.Height, Height = 1 }, 0, 300)).ShouldBe(10000, 10);
    }

    [Theory]
    [InlineData("HRC-2201")]
    [InlineData("10427.DST")]
    [InlineData("CAPPREP 10427 1A2B3C4D")]
    [InlineData("2026-11-25 08:19 UTC")]
    [InlineData("TAPE IS UPRIGHT.")]
    public void The_text_of_a_card_can_be_found(string words) =>
        Poppler.Text(SheetToPdf.Draw(CardSheet.Lay(Some.Job(), Some.Sewn()))).ShouldContain(words);

    [Fact]
    public void Letters_with_marks_are_found_as_letters() =>
        Poppler.Text(SheetToPdf.Draw(SomeSheet.With(SomeSheet.Text("Cafe\u0301 affiche Ж Ω")))).ShouldContain("Café affiche Ж Ω");

    [Fact]
    public void A_file_carries_only_the_letters_it_uses() =>
        SheetToPdf.Draw(SomeSheet.With(SomeSheet.Text("Heron"))).Length.ShouldBeLessThan(20_000);

    [Fact]
    public void A_dashed_line_costs_little_more_than_its_dashes()
    {
        var dashed = SheetToPdf.Draw(SomeSheet.With(new LinesMark([[new(1000, 1000), new(20000, 1000)]], new Stroke(20, Ink.Black, Dash.Short))));
        dashed.Length.ShouldBeLessThan(5_000);
        var row = Poppler.Gray(dashed, 508, 200, 200, 3800, 1);
        Enumerable.Range(1, row.Width - 1).Count(x => row.At(x - 1, 0) >= 128 && row.At(x, 0) < 128).ShouldBeInRange(157, 161);
    }

    [Fact]
    public void Equal_sheets_give_equal_files() =>
        SheetToPdf.Draw(ProofSheet.Lay(Some.Job(), Some.Held())).ShouldBe(SheetToPdf.Draw(ProofSheet.Lay(Some.Job(), Some.Held())));

    [Fact]
    public void The_date_in_the_file_is_the_sheets()
    {
        var pdf = System.Text.Encoding.Latin1.GetString(SheetToPdf.Draw(SomeSheet.With()));
        pdf.ShouldContain("D:20261125081904");
    }

    /// <summary>Middle of the dark pixels of one row, in pixels.</summary>
    private static double Center(GrayPicture row, int from, int count)
    {
        var dark = Enumerable.Range(from, count).Where(x => row.At(x, 0) < 128).ToArray();
        dark.Length.ShouldBeGreaterThan(2);
        return dark.Average();
    }
}
