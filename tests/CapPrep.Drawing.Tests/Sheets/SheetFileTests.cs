using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Sheets;

public class SheetFileTests
{
    [Fact]
    public void Any_sheet_reads_back_as_itself() => SomeSheet.Any.Sample(
        sheet =>
        {
            var back = SheetFile.Read(SheetFile.Write(sheet));
            back.Title.ShouldBe(sheet.Title);
            back.Description.ShouldBe(sheet.Description);
            back.Created.ShouldBe(sheet.Created);
            back.Marks.Count.ShouldBe(sheet.Marks.Count);
            for (var i = 0; i < back.Marks.Count; i++)
                back.Marks[i].ShouldBeEquivalentTo(sheet.Marks[i]);
            SheetFile.Write(back).ShouldBe(SheetFile.Write(sheet));
        },
        iter: 400,
        threads: 1);

    [Fact]
    public void A_sheet_is_text_that_a_person_can_read() => SheetFile.Text(SomeSheet.With(
        new GroupStart("Cap \"front\"", new SheetBox(0, 0, 500, 400)),
        new LinesMark([[new(100, 200), new(110, 190)], [new(5, 5), new(6, 7)]], new Stroke(20, Ink.Black, Dash.Short)),
        new BoxMark(new SheetBox(1, 2, 3, 4), null, Ink.White),
        SomeSheet.Text("é"),
        new GroupEnd())).ShouldBe("""
            capprep-sheet 1
            page 21000 29700
            title "A sheet"
            description "Something to look at."
            language "en"
            created 2026-11-25T08:19:04.125Z
            group "Cap \"front\"" 0 0 500 400
            lines 20 #000000 Short | 100 200 10 -10 | 5 5 1 2
            box 1 2 3 4 - #FFFFFF
            text Regular 600 1000 3000 1000 2400 19000 1200 #000000 "\u00E9"
            end

            """.ReplaceLineEndings("\n"));

    [Theory]
    [InlineData("")]
    [InlineData("capprep-sheet 2\n")]
    [InlineData("capprep-sheet 1\npage 1\n")]
    public void Bytes_that_are_no_sheet_are_told_apart(string text) =>
        Should.Throw<FormatException>(() => SheetFile.Read(System.Text.Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void A_sheet_cut_off_anywhere_never_reads_as_whole()
    {
        var whole = SheetFile.Write(SomeSheet.With(SomeSheet.Text("Heron"), new CircleMark(new(5, 5), 3, null, Ink.Black)));
        for (var length = 0; length < whole.Length; length++)
        {
            var cut = whole[..length];
            if (cut.Length > 0 && cut[^1] == (byte)'\n' && Lines(cut) >= 6)
                continue;
            Should.Throw<FormatException>(() => SheetFile.Read(cut), $"{length} bytes");
        }
    }

    private static int Lines(byte[] bytes) => bytes.Count(part => part == (byte)'\n');
}
