#pragma once
// The window: menu bar, Find anything and Text in its corner, keys that are the same everywhere, light and dark, text size.
#include "app/shared/settings.h"
#include "app/walk/record_out.h"
#include "app/walk/walk_view.h"

#include <QMainWindow>

class QAction;
class QActionGroup;
class QMenu;

namespace app {

class MainWindow : public QMainWindow
{
    Q_OBJECT
public:
    MainWindow(const ContentFiles &content, const std::filesystem::path &jobs, JobController::Clock clock = core::now, QWidget *parent = nullptr);

    [[nodiscard]] WalkView *walk() const { return m_walk; }

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    void addMenus();
    void addJobMenu();
    void addStepMenu();
    void addViewMenu();
    void addHelpMenu();
    void addCorner();
    void addStop();
    QAction *command(QMenu *menu, const QString &words, const QKeySequence &key, const char *name, std::function<void()> run);
    void refreshActions();
    void setText(int percent);
    void setShade(ShadeWish wish);
    void keepSettings();
    void dressCorner();
    void copyAsText();
    void printRecord();
    void savePdf();
    void showFind();
    void go(const QString &id);

    const ContentFiles &m_content;
    Settings m_settings;
    WalkView *m_walk;
    RecordOut *m_out;
    QWidget *m_corner = nullptr;
    KeyButton *m_find = nullptr;
    KeyButton *m_text = nullptr;
    QList<QAction *> m_ofJob;  // only with a job
    QList<QAction *> m_all;    // what Find anything finds
    QActionGroup *m_shades = nullptr;
    bool m_passingOn = false; // a key is with the walk
};

} // namespace app
