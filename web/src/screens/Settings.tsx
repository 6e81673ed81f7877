// What is chosen once, what is kept, and what there is to tell of this page.
import { Choices } from './settings/Choices';
import { Everything } from './settings/Everything';
import { Telling } from './settings/Telling';
import './settings/settings.css';

export function Settings() {
  return (
    <section class="screen settings" aria-labelledby="settings-title">
      <h1 id="settings-title">Settings</h1>
      <Choices />
      <Everything />
      <Telling />
    </section>
  );
}
