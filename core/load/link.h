#pragma once
// Whether what a file refers to exists and makes sense together. Faults go to the place of the name in the file.
#include "core/load/read.h"

namespace core {

// What a file is linked with. Kinds and appliances that are themselves broken are known by name: what refers to them is
// no fault, it only cannot be used.
struct Surroundings
{
    const Library &library;
    const std::set<std::string, std::less<>> &broken; // ids of files that could not be read
    bool known(std::string_view id) const { return library.kind(id) != nullptr || broken.contains(id); }
};

class Linker // one file and the notes about it
{
public:
    Linker(const Document &document, std::vector<Diagnostic> &found, const Surroundings &around)
        : m_notes(document, found), m_root(document.root), m_around(around)
    {
    }

    const Library &library() const { return m_around.library; }
    const Surroundings &around() const { return m_around; }
    // The value at a path of keys; where a key is missing, the text that equals it anywhere below; else the last key found.
    const Node &at(std::initializer_list<std::string_view> path) const { return walk(path).value; }
    // The key that leads there.
    const Node &keyAt(std::initializer_list<std::string_view> path) const { return walk(path).key; }
    void add(DiagnosticKind kind, const Node &node, std::string text, std::string hint = {})
    {
        m_notes.add(kind, node, std::move(text), std::move(hint));
    }

private:
    struct Entry
    {
        const Node &key, &value;
    };
    Entry walk(std::initializer_list<std::string_view> path) const;

    Notes m_notes;
    const Node &m_root;
    const Surroundings &m_around;
};

void linkKind(const Kind &kind, Linker &link);
void linkAppliance(Appliance &appliance, Linker &link);  // also spells contacts and rung items out
void linkAsks(const Appliance &appliance, Linker &link); // after the trees: remarks on questions that nothing goes by
void linkRungs(Appliance &appliance, Linker &link);      // a part of linkAppliance
void linkTree(Tree &tree, Linker &link);
void linkCases(std::span<const WorkedCase> cases, Linker &link);

// Shared by the four.
std::string_view withoutWire(std::string_view probe); // "wire(t1)" -> "t1"
bool isTerminal(const Kind &kind, std::string_view name, bool orConnector);
const Path *contactOf(const Kind &kind, std::string_view path); // "" = its only contact; nullptr if it is none
void checkOnly(const Only &only, const Appliance &appliance, const Node &at, Linker &link);
// What a dead test says must not ask for power; what is done with the covers on must not ask to open them.
void checkWords(const Test &test, std::string_view section, Linker &link);
// A component, a condition, or one of their modes. Nothing is said about what belongs to a broken file.
bool suspectExists(std::string_view name, const Appliance &appliance, const Surroundings &around);
// A test of a component or condition of this appliance, or one of its loops; nullptr in `test` if there is none.
Library::Found testOf(std::string_view name, const Appliance &appliance, const Library &library);
// Whether a test that was not found may be in a file that could not be read.
bool mayBeBroken(std::string_view test, const Appliance &appliance, const Surroundings &around);
std::vector<std::string> testNames(const Appliance &appliance, const Library &library);
std::vector<std::string> suspectNames(const Appliance &appliance, const Library &library);

} // namespace core
