#pragma once
// Everything that was loaded: kinds, appliances, trees, cases. Values refer to each other by id.
#include "core/tree/tree.h"

#include <memory>

namespace core {

struct Library
{
    std::map<std::string, Kind, std::less<>> kinds;
    std::map<std::string, Appliance, std::less<>> appliances;
    std::map<std::string, Tree, std::less<>> trees;
    std::vector<WorkedCase> cases;
    std::map<std::string, std::string, std::less<>> hashes; // id of kind/appliance/tree -> content hash of its file
    std::set<std::string, std::less<>> ownTrees; // trees that did not come from the shipped folder
    // ids whose file, or a file it needs, has a fault: they are not offered
    std::set<std::string, std::less<>> faulty;

    const Kind *kind(std::string_view id) const;
    const Appliance *appliance(std::string_view id) const;
    const Tree *tree(std::string_view id) const;
    // The kind of a component of an appliance; of a condition id ("house_supply.lost_leg": of house_supply). nullptr if none.
    const Kind *kindOf(const Appliance &appliance, std::string_view componentOrCondition) const;
    // "component.test" of an appliance, or one of its loops. {nullptr, nullptr, ""} if there is none.
    struct Found
    {
        const Test *test = nullptr;
        const Kind *kind = nullptr; // nullptr for a loop
        std::string component;      // "" for a loop
    };
    Found test(const Appliance &appliance, std::string_view id) const;
};

} // namespace core
