using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class ThreadMembers
{
    /// <summary>The member <c>threads</c> of a ticket or a lot: one thread a block.</summary>
    internal static IReadOnlyList<TicketThread>? Read(ObjectReader owner)
    {
        var blocks = new HashSet<int>();
        return owner.Objects("threads", 1, TicketReader.MostBlocks, reader => Thread(reader, blocks));
    }

    private static TicketThread Thread(ObjectReader reader, HashSet<int> blocks) => new()
    {
        Block = Block(reader, blocks),
        Name = reader.Text("name", 60),
        Color = reader.Color("color"),
        Code = reader.Text("code", 40),
        WeightWt = reader.Integer("weightWt", 20, 100),
        Kind = reader.Choice("kind", Words<ThreadKind>.Standard),
        Foam = reader.Flag("foam"),
        Action = reader.Choice("action", Words<StopAction>.Standard),
    };

    private static int Block(ObjectReader reader, HashSet<int> blocks)
    {
        const string Name = "block";
        if (reader.Require(Name).Integer(Name, 1, TicketReader.MostBlocks) is not { } block)
            return 0;
        if (!blocks.Add(block))
            reader.Faults.Add(reader.PointerTo(Name), ViolationCodes.Contradicts, $"Block {block} has a thread already.");
        return block;
    }
}
