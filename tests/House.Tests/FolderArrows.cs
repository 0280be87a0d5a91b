using System.Reflection;
using System.Reflection.Emit;
using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using Shared;

namespace House.Tests;

/// <summary>
/// Which folders of a project use which, read from its compiled code by namespace: signatures, fields, bases and every token in every method body. A
/// constant is copied by the compiler and leaves no trace. Folders that lie beside each other are compared, at the top and within each folder; what
/// lies in the root is a folder of its own, and a folder and one inside it may use each other.
/// </summary>
internal sealed class FolderArrows
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!).ToDictionary(c => c.Value);

    private const string Root = "(root)";

    private readonly string _root;
    private readonly Assembly _assembly;
    private readonly HashSet<(string From, string To)> _arrows = [];

    /// <param name="project">Its root namespace.</param>
    /// <param name="program">A program that uses it, by its path under <c>artifacts/bin</c>: what it needs lies there.</param>
    /// <param name="assembly">Its file.</param>
    public FolderArrows(string project, (string Folder, string File) program, string assembly)
    {
        _root = project;
        var folder = RepositoryRoot.File("artifacts", "bin", program.Folder, Configuration);
        var context = new AssemblyLoadContext(project, isCollectible: true);
        var resolver = new AssemblyDependencyResolver(Path.Combine(folder, program.File));
        context.Resolving += (_, name) => resolver.ResolveAssemblyToPath(name) is { } found ? context.LoadFromAssemblyPath(found) : null;
        _assembly = context.LoadFromAssemblyPath(Path.Combine(folder, assembly));
        foreach (var type in _assembly.GetTypes())
            if (Folder(type) is { } own)
                Look(type, own);
        context.Unload();
    }

    /// <summary>From a folder to a folder beside it that it uses.</summary>
    public IReadOnlySet<(string From, string To)> All => _arrows;

    /// <summary>Folders that use each other, in order.</summary>
    public IEnumerable<string> BothWays => _arrows.Where(a => string.CompareOrdinal(a.From, a.To) < 0 && _arrows.Contains((a.To, a.From)))
        .Select(a => $"{a.From} <-> {a.To}").Order(StringComparer.Ordinal);

    /// <summary>Folders that use each other over others, each circle once, in order.</summary>
    public IEnumerable<string> Circles
    {
        get
        {
            var above = _arrows.Select(a => a.From).Distinct().ToDictionary(f => f, Reached);
            return above.Where(f => f.Value.Contains(f.Key))
                .Select(f => string.Join(", ", f.Value.Where(to => above.TryGetValue(to, out var back) && back.Contains(f.Key)).Order(StringComparer.Ordinal)))
                .Distinct().Order(StringComparer.Ordinal);
        }
    }

    // The tests are built as what they look at is.
    private static string Configuration { get; } = new DirectoryInfo(AppContext.BaseDirectory).Name;

    // All that a folder uses, directly or over others; itself only where that leads back.
    private HashSet<string> Reached(string folder)
    {
        var reached = new HashSet<string>();
        var open = new Stack<string>([folder]);
        while (open.TryPop(out var from))
            foreach (var to in _arrows.Where(a => a.From == from).Select(a => a.To))
                if (reached.Add(to))
                    open.Push(to);
        return reached;
    }

    private void Look(Type type, string folder)
    {
        Point(folder, type.BaseType);
        foreach (var used in type.GetInterfaces().Concat(type.GetFields(Everything).Select(f => f.FieldType)))
            Point(folder, used);
        foreach (var attribute in type.GetCustomAttributesData())
            Point(folder, attribute.AttributeType);
        foreach (var method in type.GetMethods(Everything).Cast<MethodBase>().Concat(type.GetConstructors(Everything)))
        {
            foreach (var parameter in method.GetParameters())
                Point(folder, parameter.ParameterType);
            Point(folder, (method as MethodInfo)?.ReturnType);
            if (method.GetMethodBody() is { } body)
                Read(folder, type, method, body);
        }
    }

    private void Read(string folder, Type type, MethodBase method, MethodBody body)
    {
        foreach (var local in body.LocalVariables)
            Point(folder, local.LocalType);
        foreach (var clause in body.ExceptionHandlingClauses.Where(c => c.Flags == ExceptionHandlingClauseOptions.Clause))
            Point(folder, clause.CatchType);
        var (code, types, methods) = (body.GetILAsByteArray()!, type.GetGenericArguments(), method.IsGenericMethod ? method.GetGenericArguments() : []);
        for (var at = 0; at < code.Length;)
        {
            var opcode = Codes[code[at] == 0xFE ? unchecked((short)(0xFE00 | code[at + 1])) : code[at]];
            at += opcode.Size;
            if (opcode.OperandType is OperandType.InlineMethod or OperandType.InlineField or OperandType.InlineType or OperandType.InlineTok)
                Point(folder, method.Module.ResolveMember(BitConverter.ToInt32(code, at), types, methods));
            at += Operand(opcode.OperandType, code, at);
        }
    }

    private static int Operand(OperandType operand, byte[] code, int at) => operand switch
    {
        OperandType.InlineNone => 0,
        OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
        OperandType.InlineVar => 2,
        OperandType.InlineI8 or OperandType.InlineR => 8,
        OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(code, at),
        _ => 4,
    };

    private void Point(string folder, MemberInfo? used)
    {
        switch (used)
        {
            case null:
                return;
            case Type { HasElementType: true } array:
                Point(folder, array.GetElementType());
                return;
            case Type type:
                foreach (var argument in type.GenericTypeArguments)
                    Point(folder, argument);
                if (type.Assembly == _assembly && Folder(type) is { } to)
                    Add(folder, to);
                return;
            case MethodBase method:
                Point(folder, method.DeclaringType);
                if (method.IsGenericMethod)
                    foreach (var argument in method.GetGenericArguments())
                        Point(folder, argument);
                return;
            default:
                Point(folder, used.DeclaringType);
                return;
        }
    }

    // An arrow goes from the outermost folder that does not hold both to its neighbour.
    private void Add(string from, string to)
    {
        var (a, b) = (from.Split('.'), to.Split('.'));
        var shared = a.Zip(b).TakeWhile(p => p.First == p.Second).Count();
        if (shared < a.Length && shared < b.Length)
            _arrows.Add((string.Join('.', a.Take(shared + 1)), string.Join('.', b.Take(shared + 1))));
    }

    // Nothing for what the compiler or a generator made.
    private string? Folder(Type type) => type is { IsGenericParameter: false, Namespace: { } name } && $"{name}.".StartsWith(_root + ".", StringComparison.Ordinal) && !type.IsDefined(typeof(CompilerGeneratedAttribute), false) | type.IsNested
        ? name.Length > _root.Length ? name[(_root.Length + 1)..] : Root
        : null;
}
