#include "app/walk/main_window.h"

#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/find_page.h"
#include "app/walk/job_list.h"
#include "app/walk/text_page.h"
#include "app/walk/words.h"

#include <QActionGroup>
#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QScopedValueRollback>
#include <QShortcut>

namespace app {

MainWindow::MainWindow(const ContentFiles &content, const std::filesystem::path &jobs, JobController::Clock clock, QWidget *parent)
    : QMainWindow(parent), m_content(content), m_settings(loadSettings()), m_walk(new WalkView(content, jobs, nullptr, std::move(clock))), m_out(new RecordOut(this))
{
    setWindowTitle(tr("Meter First"));
    setCentralWidget(m_walk);
    m_walk->setMinimumSize(640, 400); // every page scrolls: what one arrangement needs must not hold the window open
    addMenus();
    addCorner();
    addStop();
    connect(m_walk, &WalkView::pageChanged, this, &MainWindow::refreshActions);
    connect(m_walk, &WalkView::fillsWindow, this, [this](bool fills) { menuBar()->setVisible(!fills); });
    connect(m_walk, &WalkView::wantsCopy, this, &MainWindow::copyAsText);
    connect(m_walk, &WalkView::wantsPrint, this, &MainWindow::printRecord);
    connect(m_walk, &WalkView::wantsPdf, this, &MainWindow::savePdf);
    connect(m_out, &RecordOut::said, this, [this](const QString &head, const QString &text) { m_walk->showOver(new TextPage(head, text)); });
    m_walk->setTabsAfter({m_find, m_text});
    refreshActions();
    resize(1280, 800);
}

QAction *MainWindow::command(QMenu *menu, const QString &words, const QKeySequence &key, const char *name, std::function<void()> run)
{
    QAction *action = menu->addAction(words);
    action->setShortcut(key);
    action->setObjectName(QLatin1String(name));
    connect(action, &QAction::triggered, this, [run = std::move(run)] { run(); });
    addAction(action); // its key works while the menu bar is hidden, too
    m_all << action;
    return action;
}

void MainWindow::addMenus()
{
    addJobMenu();
    addStepMenu();
    addViewMenu();
    addHelpMenu();
}

void MainWindow::addJobMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Job"));
    command(menu, tr("&Start page"), QKeySequence(Qt::CTRL | Qt::Key_1), "start_page", [this] { m_walk->start(); });
    command(menu, tr("Your &meter"), QKeySequence(), "meter", [this] { m_walk->showMeter(); });
    menu->addSeparator();
    m_ofJob << command(menu, tr("Say &how it went"), QKeySequence(Qt::Key_F8), "outcome", [this] { m_walk->showOutcome(); });
    m_ofJob << command(menu, tr("&Print the record"), QKeySequence(QKeySequence::Print), "print", [this] { printRecord(); });
    m_ofJob << command(menu, tr("Save the record as P&DF"), QKeySequence(), "pdf", [this] { savePdf(); });
    m_ofJob << command(menu, tr("&Copy as text"), QKeySequence(Qt::Key_F9), "copy", [this] { copyAsText(); });
    m_ofJob << command(menu, tr("&Enough for today: park it"), QKeySequence(), "park", [this] {
        core::Command park;
        park.what = core::Command::What::Park;
        m_walk->say(park);
    });
    menu->addSeparator();
    command(menu, tr("&Quit"), QKeySequence(QKeySequence::Quit), "quit", [this] { close(); });
}

void MainWindow::addStepMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Step"));
    m_ofJob << command(menu, tr("&Back one answer"), QKeySequence(QKeySequence::Undo), "undo", [this] { m_walk->undo(); });
    m_ofJob << command(menu, tr("&I cannot"), QKeySequence(), "cannot", [this] { m_walk->showCannot(); });
    m_ofJob << command(menu, tr("&Prove the repair"), QKeySequence(), "prove", [this] { m_walk->prove(); });
    menu->addSeparator();
    m_ofJob << command(menu, tr("&Why"), QKeySequence(Qt::Key_F4), "why", [this] { m_walk->showWhy(); });
    m_ofJob << command(menu, tr("The whole &ladder"), QKeySequence(Qt::Key_F5), "ladder", [this] { m_walk->showLadder(); });
    m_ofJob << command(menu, tr("The &chain"), QKeySequence(Qt::Key_F6), "chain", [this] { m_walk->showChain(); });
    m_ofJob << command(menu, tr("The way &so far"), QKeySequence(Qt::Key_F7), "way", [this] { m_walk->showWay(); });
}

void MainWindow::addViewMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&View"));
    m_shades = new QActionGroup(this);
    const auto shade = [&](const QString &words, const char *name, ShadeWish wish) {
        QAction *action = command(menu, words, QKeySequence(), name, [this, wish] { setShade(wish); });
        action->setCheckable(true);
        action->setChecked(m_settings.shade == wish);
        m_shades->addAction(action);
    };
    shade(tr("&Light"), "light", ShadeWish::Light);
    shade(tr("&Dark"), "dark", ShadeWish::Dark);
    shade(tr("As the &system"), "system", ShadeWish::System);
    menu->addSeparator();
    QAction *larger = command(menu, tr("La&rger text"), QKeySequence(), "larger", [this] { setText(m_settings.textPercent + Theme::kStepPercent); });
    larger->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Plus), QKeySequence(Qt::CTRL | Qt::Key_Equal)});
    command(menu, tr("S&maller text"), QKeySequence(Qt::CTRL | Qt::Key_Minus), "smaller", [this] { setText(m_settings.textPercent - Theme::kStepPercent); });
    command(menu, tr("Text &100 %"), QKeySequence(Qt::CTRL | Qt::Key_0), "text_100", [this] { setText(Theme::kLeastPercent); });
}

void MainWindow::addHelpMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Help"));
    command(menu, tr("&Help for this screen"), QKeySequence(Qt::Key_F1), "help", [this] { m_walk->showHelp(); });
    command(menu, tr("&Find anything"), QKeySequence(Qt::CTRL | Qt::Key_K), "find", [this] { showFind(); });
    command(menu, tr("&About Meter First"), QKeySequence(), "about", [this] { m_walk->showOver(aboutPage()); });
}

// One key, from anywhere, text field or not.
void MainWindow::addStop()
{
    auto *stop = new QShortcut(QKeySequence(Qt::Key_F12), this);
    stop->setAutoRepeat(false);
    connect(stop, &QShortcut::activated, this, [this] { m_walk->stop({}); });
}

void MainWindow::addCorner()
{
    m_corner = new QWidget;
    auto *row = new QHBoxLayout(m_corner);
    row->setContentsMargins(0, 0, 8, 0);
    m_find = new KeyButton(tr("Find anything"), QStringLiteral("Ctrl K"));
    m_text = new KeyButton({}, QStringLiteral("Ctrl +"));
    for (KeyButton *button : {m_find, m_text}) {
        button->setFace(KeyButton::Face::Link);
        button->setSize(KeyButton::Size::Row);
        row->addWidget(button);
    }
    m_find->setObjectName(QStringLiteral("corner_find"));
    m_text->setObjectName(QStringLiteral("corner_text"));
    connect(m_find, &QPushButton::clicked, this, &MainWindow::showFind);
    connect(m_text, &QPushButton::clicked, this, [this] {
        const int next = m_settings.textPercent + Theme::kStepPercent;
        setText(next > 200 ? Theme::kLeastPercent : next);
    });
    menuBar()->setCornerWidget(m_corner);
    dressCorner();
    connect(&Theme::current(), &Theme::changed, this, &MainWindow::dressCorner);
}

void MainWindow::dressCorner()
{
    m_text->setWords(tr("Text %1 %").arg(Theme::current().textPercent()));
    m_corner->adjustSize();
    menuBar()->setCornerWidget(m_corner);
    m_corner->show();
}

void MainWindow::refreshActions()
{
    const bool job = m_walk->job().hasJob(), stopped = job && m_walk->job().view().stopped;
    for (QAction *action : m_ofJob)
        action->setEnabled(job && !stopped);
}

void MainWindow::setText(int percent)
{
    m_settings.textPercent = std::clamp(percent, Theme::kLeastPercent, Theme::kMostPercent);
    Theme::current().setTextPercent(m_settings.textPercent);
    keepSettings();
}

void MainWindow::setShade(ShadeWish wish)
{
    m_settings.shade = wish;
    Theme::current().setShadeWish(wish);
    keepSettings();
}

void MainWindow::keepSettings()
{
    if (!saveSettings(m_settings))
        m_walk->frame()->setFault(tr("the settings could not be written."));
}

// Keys while nothing has the focus. What the walk does not take comes back here, as any child's key.
void MainWindow::keyPressEvent(QKeyEvent *event)
{
    if (focusWidget() == nullptr && !m_passingOn) {
        const QScopedValueRollback passing(m_passingOn, true);
        QApplication::sendEvent(m_walk, event);
    } else {
        QMainWindow::keyPressEvent(event);
    }
}

void MainWindow::copyAsText()
{
    if (m_walk->job().hasJob())
        QApplication::clipboard()->setText(qs(recordText(m_walk->record())));
}

void MainWindow::printRecord()
{
    if (m_walk->job().hasJob())
        m_out->print(m_walk->record());
}

void MainWindow::savePdf()
{
    if (m_walk->job().hasJob())
        m_out->savePdf(m_walk->record());
}

void MainWindow::showFind()
{
    std::vector<Hit> all;
    for (const QAction *action : m_all)
        if (action->isEnabled() && action->objectName() != QLatin1String("find")) {
            Hit hit;
            hit.id = QStringLiteral("command:") + action->objectName();
            hit.head = action->text().remove(QLatin1Char('&'));
            hit.tail = tr("command");
            hit.note = action->shortcut().toString(QKeySequence::NativeText);
            all.push_back(std::move(hit));
        }
    for (Hit hit : complaintsOf(m_content)) {
        hit.id.prepend(QStringLiteral("tree:"));
        hit.note = tr("new job");
        all.push_back(std::move(hit));
    }
    for (Hit hit : JobList::read(m_content, m_walk->job().folder()).jobs) {
        hit.id.prepend(QStringLiteral("job:"));
        all.push_back(std::move(hit));
    }
    auto *page = new FindPage(std::move(all));
    connect(page, &FindPage::chosen, this, &MainWindow::go, Qt::QueuedConnection);
    m_walk->showOver(page);
}

void MainWindow::go(const QString &id)
{
    const QString what = id.section(QLatin1Char(':'), 0, 0), rest = id.section(QLatin1Char(':'), 1);
    if (what == QLatin1String("command")) {
        m_walk->back();
        for (QAction *action : m_all)
            if (action->objectName() == rest)
                action->trigger();
    } else if (what == QLatin1String("tree")) {
        m_walk->start();
        m_walk->begin(rest);
    } else if (what == QLatin1String("job")) {
        m_walk->open(rest.toStdString());
    }
}

} // namespace app
