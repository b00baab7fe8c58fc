// The form for a photo: what was taken is saved here first and sent as soon as it can be, as finds are.
import { refresh, send } from './bench.js';

for (const form of /** @type {NodeListOf<HTMLFormElement>} */ (document.querySelectorAll('form.photo')))
    form.addEventListener('submit', async event => {
        event.preventDefault();
        const button = form.querySelector('button');
        if (button) button.disabled = true;
        try {
            if (!await send(form)) return;
            form.reset();
            await refresh();
        } finally {
            if (button) button.disabled = false;
        }
    });
