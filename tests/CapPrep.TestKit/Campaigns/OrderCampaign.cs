using System.Globalization;
using CapPrep.Engine;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.TestKit.Preparations;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Campaigns;

/// <summary>Prepares random designs and looks whether each proposed tape keeps what is promised of it.</summary>
public static class OrderCampaign
{
    /// <summary>The designs from number 0 up to the count.</summary>
    public static Task<CampaignReport> Run(int count, Action<string> say)
    {
        var cases = new List<OrderCase>();
        for (var number = 0; number < count; number++)
        {
            var one = Once(number);
            cases.Add(one);
            if (one.Faults.Count > 0 || one.IsMoved)
                say($"{number}: {(one.IsMoved ? $"not settled, {one.Again}; " : "")}{string.Join("; ", one.Faults)}");
        }

        return Task.FromResult(new CampaignReport(
            [
                ("designs", Text(cases.Count)),
                ("proposed", Text(cases.Count(one => one.IsProposed))),
                ("proposed and used", Text(cases.Count(one => one.IsUsed))),
                ("proposed and settled", Text(cases.Count(one => one.IsSettled))),
                ("used, and ordered anew when read again", Text(cases.Count(one => one.IsUsed && one.IsMoved))),
                ("not used, and ordered anew when read again", Text(cases.Count(one => !one.IsUsed && one.IsMoved))),
                ("elements", Text(cases.Sum(one => one.Elements))),
                ("broken", Text(cases.Count(one => one.Faults.Count > 0))),
            ],
            [.. cases.SelectMany((one, number) => one.Faults.Select(fault => $"{number}: {fault}"))]));
    }

    /// <summary>One design, prepared, judged and prepared again.</summary>
    public static OrderCase Once(int number)
    {
        var design = RandomDesign.Of(number);
        var tape = design.Draft.ToBytes("RANDOM");
        var ticket = StarterShop.Ticket(design.Threads);
        try
        {
            var first = StarterShop.Prepare(tape, ticket);
            var one = new OrderCase { Elements = first.Reading.Elements.Count };
            if (first.ProposedTape is null)
                return one;
            var again = OrderPromises.PrepareAgain(first, ticket).Order!;
            return one with
            {
                IsProposed = true,
                IsUsed = first.Order!.Used == UsedOrder.Proposed,
                IsSettled = first.IsSettled,
                IsMoved = again.Used == UsedOrder.Proposed,
                Again = string.Create(CultureInfo.InvariantCulture, $"{Sum(again.Received):0.000} to {Sum(again.Proposed):0.000}, {first.Order.Order.Count} elements, then {again.Order.Count}"),
                Faults = [.. OrderPromises.Broken(tape, first), .. OrderPromises.Moved(first, again)],
            };
        }
        catch (EngineFaultException fault)
        {
            return new OrderCase { Faults = [fault.Message] };
        }
    }

    private static double Sum(OrderFigures figures) => figures.Shares.OrderIndex + (0.01 * figures.Trims);

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What came of one design.</summary>
public sealed record OrderCase
{
    public int Elements { get; init; }

    /// <summary>Another order was written.</summary>
    public bool IsProposed { get; init; }

    /// <summary>It was the order to sew.</summary>
    public bool IsUsed { get; init; }

    /// <summary>The engine itself found the written tape to stay as it is.</summary>
    public bool IsSettled { get; init; }

    /// <summary>The written tape, sent again, would be put in another order once more.</summary>
    public bool IsMoved { get; init; }

    /// <summary>What the second ordering would gain.</summary>
    public string Again { get; init; } = "";

    public IReadOnlyList<string> Faults { get; init; } = [];
}
