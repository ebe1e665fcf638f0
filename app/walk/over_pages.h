#pragma once
// Pages that lie over a step until they are closed: what is in the way, how it went, where it is, welcome back.
#include "app/walk/choice_page.h"

namespace app {

ChoicePage *cannotPage(const JobController &job, QWidget *parent = nullptr);
ChoicePage *outcomePage(const JobController &job, QWidget *parent = nullptr);
// After a break or a crash: power unknown, and what the log knows of covers, wires and meter, to be looked over.
ChoicePage *resumePage(const JobController &job, QWidget *parent = nullptr);
// Where the part of this step is, and what it is for.
ChoicePage *wherePage(const JobController &job, QWidget *parent = nullptr);

} // namespace app
