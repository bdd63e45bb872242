using System.Text;
using System.Xml;
using System.Xml.Linq;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Output;

public class SvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void A_proof_has_size_title_and_description()
    {
        var root = Root(ProofSheet.Lay(Some.Job(), Some.Held()));
        root.Attribute("width")!.Value.ShouldBe("297mm");
        root.Attribute("height")!.Value.ShouldBe("210mm");
        root.Attribute("viewBox")!.Value.ShouldBe("0 0 297 210");
        root.Element(Svg + "title")!.Value.ShouldContain("HRC-2201");
        root.Element(Svg + "desc")!.Value.ShouldContain("44.5 mm high");
    }

    [Fact]
    public void Letter_paper_keeps_two_decimals() =>
        Root(CardSheet.Lay(Some.Job() with { Paper = Paper.Letter }, Some.Sewn())).Attribute("viewBox")!.Value.ShouldBe("0 0 215.9 279.4");

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onload=\"alert(1)")]
    [InlineData("]]>&amp;&#0;")]
    [InlineData("ab\u202Egnp\u0000\u001B\uFFFF")]
    public void A_hostile_name_stays_text(string name)
    {
        var root = Root(ProofSheet.Lay(Some.Job() with { FileName = name }, Named(name)));
        root.Descendants().Select(element => element.Name.LocalName).Distinct()
            .ShouldBeSubsetOf(["title", "desc", "defs", "path", "use", "g", "rect", "circle", "clipPath"]);
        root.DescendantsAndSelf().Attributes().ShouldAllBe(attribute => !attribute.Name.LocalName.StartsWith("on"));
        root.Descendants().Attributes("href").ShouldAllBe(attribute => attribute.Value.StartsWith('#'));
    }

    [Fact]
    public void A_name_of_four_thousand_letters_stays_in_its_box()
    {
        var sheet = ProofSheet.Lay(Some.Job(), Named(new string('W', 4000)));
        foreach (var text in sheet.Marks.OfType<TextMark>())
            (text.At.X + TextFit.Width(text.Text, text.Font, text.Size)).ShouldBeLessThanOrEqualTo(text.Box.Right + 1);
        SheetToSvg.Draw(sheet).Length.ShouldBeLessThan(200_000);
    }

    [Fact]
    public void Many_sheets_at_once_come_out_as_one_alone()
    {
        var alone = SheetToSvg.Draw(ProofSheet.Lay(Some.Job(), Some.Held()));
        var files = new byte[64][];
        Parallel.For(0, files.Length, i => files[i] = SheetToSvg.Draw(ProofSheet.Lay(Some.Job(), Some.Held())));
        files.ShouldAllBe(file => file.SequenceEqual(alone));
        var pdf = SheetToPdf.Draw(CardSheet.Lay(Some.Job(), Some.Sewn()));
        Parallel.For(0, files.Length, i => files[i] = SheetToPdf.Draw(CardSheet.Lay(Some.Job(), Some.Sewn())));
        files.ShouldAllBe(file => file.SequenceEqual(pdf));
    }

    [Fact]
    public void Text_has_a_name_that_can_be_read_aloud() =>
        Root(SomeSheet.With(SomeSheet.Text("Heron <crest>"))).Descendants(Svg + "g")
            .ShouldContain(group => group.Attribute("aria-label") != null && group.Attribute("aria-label")!.Value == "Heron <crest>");

    [Fact]
    public void Every_outline_used_is_defined()
    {
        var root = Root(CardSheet.Lay(Some.Job(), Some.Sewn()));
        var defined = root.Descendants().Attributes("id").Select(id => "#" + id.Value).ToHashSet();
        root.Descendants().Attributes("href").ShouldAllBe(attribute => defined.Contains(attribute.Value));
    }

    [Fact]
    public void A_character_that_the_font_lacks_leaves_a_mark()
    {
        var known = Root(SomeSheet.With(SomeSheet.Text("a"))).Descendants(Svg + "path").Count();
        var unknown = Root(SomeSheet.With(SomeSheet.Text("a\u6F22\u6F22"))).Descendants(Svg + "path").Count();
        (unknown - known).ShouldBe(2);
    }

    [Fact]
    public void A_tape_of_a_hundred_thousand_stitches_stays_below_one_and_a_half_megabytes()
    {
        var pen = new StitchPen();
        for (var row = 0; row < 6; row++)
            for (var column = 0; column < 15; column++)
                for (var layer = 0; layer < 12; layer++)
                    pen.TrimTo(column * 60, row * 80).Column((column * 60) + layer, (row * 80) + layer, 40, 184);
        pen.Count.ShouldBeGreaterThan(100_000);
        SheetToSvg.Draw(ProofSheet.Lay(Some.Job(), Some.Sewn(pen.Tape()))).Length.ShouldBeLessThan(1_500_000);
    }

    [Fact]
    public void Numbers_have_at_most_two_decimals_and_no_culture()
    {
        SvgNumber.Mm(-5).ShouldBe("-.05");
        SvgNumber.Mm(120).ShouldBe("1.2");
        SvgNumber.Mm(-12300).ShouldBe("-123");
        SvgNumber.Mm(0).ShouldBe("0");
        SvgNumber.Chains([[new(0, 0), new(10, -20), new(15, 5)]], closed: true).ShouldBe("M0 0l.1-.2 .05 .25z");
    }

    private static CapPrep.Engine.Preparation Named(string name)
    {
        var held = Some.Held();
        var ticket = held.Ticket.Received with { OrderNumber = name, Customer = name };
        return held with { Ticket = held.Ticket with { Received = ticket, Design = name } };
    }

    private static XElement Root(Sheet sheet)
    {
        var text = Encoding.UTF8.GetString(SheetToSvg.Draw(sheet));
        using var reader = XmlReader.Create(new StringReader(text), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader).Root!;
    }
}
