using System.Collections.Immutable;
using System.Threading.Channels;

namespace ScaleLink.Daemon.Runtime;

/// <summary>Hands every item to every reader. Each reader has a bounded queue of its own: a slow one loses its oldest items, is told how many, and slows nobody.</summary>
internal sealed class Broadcast<T>
{
    private ImmutableArray<Subscription> _readers = [];

    /// <summary>Never blocks.</summary>
    public void Publish(T item)
    {
        foreach (var reader in _readers)
            reader.Offer(item);
    }

    /// <summary>Begins to collect items; dispose the subscription to stop.</summary>
    public Subscription Subscribe(int capacity)
    {
        var reader = new Subscription(this, capacity);
        ImmutableInterlocked.Update(ref _readers, all => all.Add(reader));
        return reader;
    }

    /// <summary>One reader's queue.</summary>
    public sealed class Subscription : IDisposable
    {
        private readonly Broadcast<T> _from;
        private readonly Channel<T> _queue;
        private long _dropped;

        internal Subscription(Broadcast<T> from, int capacity)
        {
            _from = from;
            var options = new BoundedChannelOptions(capacity) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true };
            _queue = Channel.CreateBounded<T>(options, _ => Interlocked.Increment(ref _dropped));
        }

        /// <summary>Items lost because this reader was slow.</summary>
        public long Dropped => Interlocked.Read(ref _dropped);

        /// <summary>The items, oldest first.</summary>
        public ChannelReader<T> Items => _queue.Reader;

        /// <inheritdoc/>
        public void Dispose()
        {
            ImmutableInterlocked.Update(ref _from._readers, all => all.Remove(this));
            _queue.Writer.TryComplete();
        }

        internal void Offer(T item) => _queue.Writer.TryWrite(item);
    }
}
