using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Proofs;

/// <summary>
/// Which part of a proof stands where. The two sew orders stand below the cap where that leaves the cap its size, else
/// in the margin where that leaves all findings, else below a smaller cap.
/// </summary>
/// <param name="Window">The cap.</param>
/// <param name="Margin">Findings and threads.</param>
/// <param name="Orders">Null where no other order is proposed.</param>
internal sealed record ProofRooms(SheetBox Window, SheetBox Margin, SheetBox? Orders)
{
    private const int Gap = 300;

    /// <summary>More would only take the cap's shape away.</summary>
    private const int MostOrders = 6600;
    private const int Step = 100;

    /// <param name="body">To be divided.</param>
    /// <param name="marginWidth">Width of the margin.</param>
    /// <param name="view">How a window shows the cap.</param>
    /// <param name="margin">Needs room for findings and threads; null: no orders are shown.</param>
    public static ProofRooms Of(SheetBox body, int marginWidth, Func<SheetBox, CapView> view, ProofMargin? margin)
    {
        var window = body.LeftPart(body.Width - marginWidth - Gap);
        var side = body.RightOf(body.Width - marginWidth);
        if (margin is null)
            return new ProofRooms(window, side, null);
        var reduction = view(window).Reduction;
        return BelowAt(reduction) ?? InMargin(window, side, margin) ?? BelowAt(reduction + 1) ?? Below(window, side, OrderPair.Least);

        ProofRooms? BelowAt(int reduction)
        {
            for (var orders = MostOrders; orders >= OrderPair.Least; orders -= Step)
            {
                if (view(Above(window, orders)).Reduction == reduction)
                    return Below(window, side, orders);
            }

            return null;
        }
    }

    private static ProofRooms? InMargin(SheetBox window, SheetBox side, ProofMargin margin)
    {
        var threads = margin.ThreadsHeight;
        var orders = Math.Min(MostOrders, side.Height - threads - margin.FindingsHeight(side.Width) - (2 * Gap));
        if (orders < OrderPair.LeastInMargin)
            return null;
        var rest = side.TopPart(side.Height - threads - Gap);
        return new ProofRooms(window, side, rest.Below(rest.Height - orders));
    }

    private static ProofRooms Below(SheetBox window, SheetBox side, int orders) =>
        new(Above(window, orders), side, window.Below(window.Height - orders));

    private static SheetBox Above(SheetBox window, int orders) => window.TopPart(window.Height - orders - Gap);
}
