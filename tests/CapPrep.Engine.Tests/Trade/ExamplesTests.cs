using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class ExamplesTests
{
    [Fact]
    public void The_examples_of_the_api_document_are_read_by_the_real_readers()
    {
        Read(TradeReader.CapStyle(Examples.Bytes("cap-style.json"))).Measured.ShouldNotBeNull();
        Read(TradeReader.CapFrame(Examples.Bytes("cap-frame.json"))).Numbers.Count.ShouldBe(8);
        Read(TradeReader.Machine(Examples.Bytes("machine.json"))).HeadsOff.ShouldBe([5]);
        Read(TradeReader.FramingStation(Examples.Bytes("framing-station.json"))).Language.ShouldBe("es");
        Read(TradeReader.Shop(Examples.Bytes("shop.json"))).Id.ShouldBe("main");
        Read(TradeReader.RuleBook(Examples.Bytes("rule-book.json"), Embedded.HouseBook)).Overrides.Count.ShouldBe(1);
    }

    private static T Read<T>(ReadResult<T> result)
        where T : class
    {
        result.Violations.ShouldBeEmpty();
        return result.Value!;
    }
}
