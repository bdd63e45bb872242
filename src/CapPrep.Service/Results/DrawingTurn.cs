namespace CapPrep.Service.Results;

/// <summary>
/// Lets one request at a time draw a stored sheet: a picture of a large design takes a core and tens of megabytes,
/// and whoever may read could ask for a hundred of them at once.
/// </summary>
internal sealed class DrawingTurn : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>Waits for the turn, then draws.</summary>
    public async Task<T> Take<T>(Func<Task<T>> draw, CancellationToken cancel)
    {
        await _turn.WaitAsync(cancel);
        try
        {
            return await draw();
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();
}
