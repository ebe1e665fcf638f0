#pragma once
// Jobs on the disk, as they are offered to go on with.
#include "app/store/content_files.h"
#include "app/walk/hits.h"

#include <QCoreApplication>

#include <filesystem>

namespace app {

struct JobList
{
    Q_DECLARE_TR_FUNCTIONS(app::JobList)
public:
    std::vector<Hit> jobs; // id: the file's path; the one changed last first
    QString fault;         // the folder cannot be read
    int damaged = 0;       // of them, how many cannot be gone on with

    static JobList read(const ContentFiles &content, const std::filesystem::path &folder);
};

// Complaints that can be started, as they are searched.
std::vector<Hit> complaintsOf(const ContentFiles &content);

} // namespace app
