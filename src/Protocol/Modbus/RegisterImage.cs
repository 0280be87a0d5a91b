using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.Modbus;

/// <summary>The registers of one slave as last read, block by block, and the reading they make. Allocates nothing after its making.</summary>
sealed class RegisterImage
{
    readonly RegisterMap _map;
    readonly byte[][] _blocks;
    readonly (int Block, int Offset)[] _places;

    /// <summary>An image of that map, all zero.</summary>
    public RegisterImage(RegisterMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        _map = map;
        _blocks = [.. map.Blocks.Select(block => new byte[2 * block.Count])];
        _places = [.. map.Fields.Select(Place)];
    }

    /// <summary>Takes the registers of one block.</summary>
    /// <param name="block">Its place in <see cref="RegisterMap.Blocks"/>.</param>
    /// <param name="data">Two bytes a register, high byte first.</param>
    /// <exception cref="ArgumentException">Not as many registers as the block has.</exception>
    public void Store(int block, ReadOnlySpan<byte> data)
    {
        if (data.Length != _blocks[block].Length)
            throw new ArgumentException($"Block {block} has {_blocks[block].Length} bytes, not {data.Length}.", nameof(data));
        data.CopyTo(_blocks[block]);
    }

    /// <summary>What the registers say.</summary>
    public PadReading Read()
    {
        var reading = new PadReading();
        for (var index = 0; index < _places.Length; index++)
        {
            var field = _map.Fields[index];
            field.Rule.Apply(field.Read(_blocks[_places[index].Block].AsSpan(_places[index].Offset)), ref reading);
        }

        return reading;
    }

    (int Block, int Offset) Place(RegisterField field)
    {
        for (var block = 0; block < _map.Blocks.Count; block++)
        {
            var (function, address, count) = _map.Blocks[block];
            if (function == field.Function && field.Address >= address && field.Address + field.Registers <= address + count)
                return (block, 2 * (field.Address - address));
        }

        throw new ArgumentException($"No block holds register {field.Address}.", nameof(field));
    }
}
