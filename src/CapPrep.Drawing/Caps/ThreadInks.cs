using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;

namespace CapPrep.Drawing.Caps;

/// <summary>The ink of each received color block: the ticket's color, or a numbered gray step where it names none.</summary>
internal sealed class ThreadInks
{
    private readonly TicketThread?[] _threads;

    public ThreadInks(Preparation preparation)
    {
        _threads = new TicketThread?[preparation.Facts.Blocks];
        foreach (var thread in preparation.Ticket.Received.Threads ?? [])
            if (thread.Block >= 1 && thread.Block <= _threads.Length)
                _threads[thread.Block - 1] = thread;
    }

    public int Blocks => _threads.Length;

    /// <summary>What the ticket says of a block, counted from 1; null when nothing.</summary>
    public TicketThread? Thread(int block) => block >= 1 && block <= Blocks ? _threads[block - 1] : null;

    public Ink Of(int block) => Ink.TryParse(Thread(block)?.Color, out var ink) ? ink : GrayStep(block);

    /// <summary>From dark to light, so that neighbors in the order differ.</summary>
    private Ink GrayStep(int block) => Ink.Gray((byte)(40 + (130 * (block - 1) / Math.Max(1, Blocks - 1))));
}
